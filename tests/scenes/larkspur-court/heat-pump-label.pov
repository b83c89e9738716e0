// Close-up of the rating label of the outdoor unit.
#declare Amb = 0.03;
#include "lc.inc"
#include "unit.inc"
camera { location <-0.055,0.025,-0.30> right x*4/3 up y angle 62 look_at <-0.022,-0.002,0> }
sky_sphere { SkyDay }
light_source { <-40,46,-50> color rgb <1,0.93,0.83>*0.9 parallel point_at <0,0,0> }
#declare F = "cyrvetic.ttf"
#macro Line(T,S,X,Y) text { ttf F T 0.04, 0 scale <S,S,0.02> translate <X,Y,-0.0022> Satin(color srgb <0.10,0.10,0.11>) } #end
// panel, seam, louvres to the left
box { <-0.17,-0.4,0>,<0.4,0.4,0.02> texture { pigment { average pigment_map { [2 color srgb <0.79,0.76,0.69>] [1 granite color_map { [0 color srgb <0.58,0.53,0.45>][0.4 color srgb <0.78,0.75,0.68>][1 color srgb <0.82,0.79,0.72>] } scale 0.25] } } normal { bumps 0.04 scale 0.002 } finish { ambient 0 emission Amb diffuse 0.8 specular 0.15 roughness 0.03 } } }
box { <-0.4,-0.4,0.05>,<-0.17,0.4,0.06> texture { pigment { gradient x color_map { [0 color srgb 0.10][0.5 color srgb 0.26][1 color srgb 0.10] } scale 0.0035 } finish { F_Matte } } }
#declare Y=-0.4; #while (Y<0.4) box { <-0.5,Y,0.0>,<-0.178,Y+0.0035,0.03> texture { T_Beige } } box { <-0.5,Y-0.007,0.001>,<-0.178,Y+0.002,0.003> texture { T_Beige } } #declare Y=Y+0.02; #end
object { RB(<-0.186,-0.4,-0.004>,<-0.166,0.4,0.02>,0.003) texture { T_BeigeD } }
// the label
union {
  object { RB(<-0.118,-0.078,-0.0016>,<0.118,0.078,0.0004>,0.0007) texture { pigment { granite turbulence 0.4 color_map { [0 color srgb <0.83,0.82,0.77>][0.3 color srgb <0.92,0.91,0.88>][1 color srgb <0.94,0.93,0.91>] } scale 0.09 } finish { ambient 0 emission Amb diffuse 0.82 specular 0.15 roughness 0.01 } } }
  difference { box { <-0.112,-0.072,-0.0019>,<0.112,0.072,-0.001> } box { <-0.1112,-0.0712,-0.003>,<0.1112,0.0712,0> } Satin(color srgb 0.15) }
  box { <-0.112,0.0345,-0.0019>,<0.112,0.0353,-0.001> Satin(color srgb 0.15) }
  box { <-0.112,-0.0015,-0.0019>,<0.112,-0.0008,-0.001> Satin(color srgb 0.15) }
  box { <-0.112,-0.0375,-0.0019>,<0.112,-0.0368,-0.001> Satin(color srgb 0.15) }
  Line("HEAT PUMP OUTDOOR UNIT",0.0157,-0.104,0.0470)
  Line("SERIAL",0.0135,-0.104,0.0115) Line("1328E00417",0.0215,-0.042,0.0095)
  Line("R-410A",0.0195,-0.104,-0.0255)
  Line("VOLTS",0.0135,-0.104,-0.0590) Line("208/230",0.0215,-0.042,-0.0612)
  rotate z*-1.2 }
// screws
#macro Screw(P) union { cylinder { P,P-z*0.003,0.0075 } cylinder { P,P-z*0.0045,0.0048 } box { P+<-0.004,-0.0007,-0.0048>,P+<0.004,0.0007,-0.004> texture { T_BlackM } } texture { T_Galv } } #end
Screw(<-0.145,0.096,0>) Screw(<0.150,0.100,0>) Screw(<-0.146,-0.098,0>)
// something opposite for the light to come from
plane { y,-0.6 texture { T_Gravel } }
