// Laundry closet with washer and dryer, as found.
#include "lc.inc"
camera { location <0.06,1.5,-1.75> right x*3/4 up y angle 58 look_at <0.0,1.06,0.8> }
#declare H = 2.45;
#declare WallC = color srgb <0.90,0.85,0.75>;
// closet 1.75 wide, 0.95 deep, opening in the hall wall at z = 0
difference { box { <-2.5,-0.1,0>,<2.5,H+0.1,1.2> } box { <-0.92,-0.2,0.09>,<0.92,H,1.0> } box { <-0.85,-0.2,-0.1>,<0.85,2.06,0.5> } Paint(WallC) }
box { <-2.5,H,-3>,<2.5,H+0.1,1.2> texture { pigment { color CeilC } normal { granite 0.3 scale 0.06 } finish { F_Matte } } }
box { <-1.5,0,-3>,<-1.4,H,0> Paint(WallC) } box { <1.4,0,-3>,<1.5,H,0> Paint(WallC) }
union { box { <-0.93,0,-0.015>,<-0.85,2.13,0.0> } box { <0.85,0,-0.015>,<0.93,2.13,0.0> } box { <-0.93,2.06,-0.016>,<0.93,2.14,0.0> texture { T_OakH } } box { <-0.85,0,0>,<-0.835,2.06,0.09> } box { <0.835,0,0>,<0.85,2.06,0.09> } box { <-0.85,2.045,0>,<0.85,2.06,0.09> } texture { T_OakV } }
union { box { <-1.4,0,-0.012>,<-0.93,0.07,0> } box { <0.93,0,-0.012>,<1.4,0.07,0> } texture { T_OakH } }
TileFloor(-2.5,2.5,-3.0,1.1,0.305,0.003,color srgb <0.80,0.73,0.61>,0.08,F_Satin,color srgb <0.56,0.50,0.41>,4)
// bifold doors pushed to either side
#macro Louvre(W,H2) union { box { <0,0,-0.014>,<0.06,H2,0.014> texture { T_OakV } } box { <W-0.06,0,-0.014>,<W,H2,0.014> texture { T_OakV translate 0.3 } } box { <0.06,0,-0.014>,<W-0.06,0.1,0.014> texture { T_OakH } } box { <0.06,H2-0.09,-0.014>,<W-0.06,H2,0.014> texture { T_OakH } } box { <0.06,H2*0.48,-0.014>,<W-0.06,H2*0.48+0.09,0.014> texture { T_OakH } }
  #local Y=0.115; #while (Y<H2-0.1) #if (Y<H2*0.47 | Y>H2*0.48+0.1) box { <0.06,-0.003,-0.018>,<W-0.06,0.003,0.018> rotate x*35 translate <0,Y,0> texture { T_OakH translate Y } } #end #local Y=Y+0.03; #end } #end
object { Louvre(0.40,2.0) rotate y*78 translate <-0.82,0.02,0.03> } object { Louvre(0.40,2.0) rotate y*-84 scale <-1,1,1> rotate y*180 translate <-0.76,0.02,-0.36> rotate y*0 }
object { Louvre(0.40,2.0) rotate y*102 translate <0.82,0.02,0.03> } object { Louvre(0.40,2.0) rotate y*96 translate <0.775,0.02,0.03> }
// washer (left) and dryer (right)
#declare WH = Gloss(color srgb <0.92,0.92,0.90>)
#macro Machine(Dryer)
  union {
    RB(<-0.34,0.03,0>,<0.34,0.92,0.68>,0.018)
    RB(<-0.34,0.90,0.52>,<0.34,1.10,0.68>,0.02)
    box { <-0.31,0.945,0.512>,<0.31,1.075,0.525> Gloss(color srgb <0.36,0.38,0.40>) }
    #local I=0; #while (I<3) cylinder { <-0.22+I*0.15,1.01,0.48>,<-0.22+I*0.15,1.01,0.53>,0.032 texture { T_Porc } } box { <-0.224+I*0.15,1.0,0.47>,<-0.216+I*0.15,1.038,0.49> texture { T_BlackM } } #local I=I+1; #end
    box { <0.19,0.985,0.50>,<0.28,1.035,0.52> Gloss(color srgb <0.75,0.76,0.76>) }
    #if (Dryer)
      RB(<-0.27,0.32,-0.022>,<0.27,0.80,0>,0.012) RB(<-0.245,0.62,-0.034>,<-0.215,0.75,-0.018>,0.006)
      box { <-0.34,0.10,-0.002>,<0.34,0.106,0.01> texture { T_BlackM } }
      box { <-0.15,0.918,0.2>,<0.15,0.926,0.24> Gloss(color srgb 0.7) }
    #else
      RB(<-0.28,0.915,0.05>,<0.28,0.935,0.49>,0.009) box { <-0.08,0.92,0.035>,<0.08,0.935,0.06> }
      box { <-0.34,0.16,-0.002>,<0.34,0.166,0.01> texture { T_BlackM } }
    #end
    cylinder { <-0.3,0,0.05>,<-0.3,0.05,0.05>,0.02 texture { T_BlackM } } cylinder { <0.3,0,0.05>,<0.3,0.05,0.05>,0.02 texture { T_BlackM } }
    texture { WH } }
#end
object { Machine(0) translate <-0.40,0,0.18> } object { Machine(1) rotate y*-1.5 translate <0.37,0,0.17> }
// supply box and hoses behind the washer
difference { box { <-0.72,1.16,0.985>,<-0.42,1.40,1.01> texture { T_White } } box { <-0.70,1.18,0.9>,<-0.44,1.38,0.995> Gloss(color srgb 0.8) } }
union { cylinder { <-0.65,1.30,0.99>,<-0.65,1.30,0.94>,0.012 } cylinder { <-0.50,1.30,0.99>,<-0.50,1.30,0.94>,0.012 } box { <-0.68,1.325,0.945>,<-0.62,1.335,0.965> } box { <-0.53,1.325,0.945>,<-0.47,1.335,0.965> } texture { T_Brass } }
sphere_sweep { cubic_spline 5, <-0.65,1.4,0.9>,0.012,<-0.65,1.30,0.935>,0.012,<-0.65,1.2,0.91>,0.012,<-0.60,1.02,0.93>,0.012,<-0.6,0.8,0.93>,0.012 Satin(color srgb <0.60,0.14,0.12>) }
sphere_sweep { cubic_spline 5, <-0.50,1.4,0.9>,0.012,<-0.50,1.30,0.935>,0.012,<-0.49,1.2,0.91>,0.012,<-0.52,1.02,0.93>,0.012,<-0.52,0.8,0.93>,0.012 Satin(color srgb <0.16,0.26,0.52>) }
sphere_sweep { cubic_spline 6, <-0.57,0.9,0.93>,0.018,<-0.57,1.0,0.93>,0.018,<-0.56,1.22,0.92>,0.018,<-0.57,1.34,0.945>,0.018,<-0.58,1.25,0.985>,0.018,<-0.58,1.1,1>,0.018 Satin(color srgb 0.35) }
// dryer duct
union { #declare I=0; #while (I<24) torus { 0.055,0.008 rotate z*90*0 translate <0.52,1.0+I*0.012,0.90+0.0006*I*I*0.1> } #declare I=I+1; #end cylinder { <0.52,0.98,0.90>,<0.52,1.29,0.92>,0.056 } cylinder { <0.52,1.29,0.92>,<0.52,1.29,1.0>,0.056 } sphere { <0.52,1.29,0.92>,0.057 } cylinder { <0.52,1.29,0.985>,<0.52,1.29,1.0>,0.085 } texture { T_Alu } }
object { Outlet(0) translate <0.1,1.25,0.995> } box { <0.085,1.235,0.96>,<0.115,1.265,0.99> texture { T_BlackM } }
// shelf and things on it
object { RB(<-0.92,1.66,0.64>,<0.92,1.685,1.0>,0.004) texture { T_White } } union { box { <-0.9,1.44,0.97>,<-0.88,1.66,1.0> } box { <0.88,1.44,0.97>,<0.9,1.66,1.0> } box { <-0.01,1.60,0.7>,<0.01,1.66,1.0> } texture { T_White } }
union { RB(<-0.72,1.686,0.74>,<-0.56,1.93,0.88>,0.03) cylinder { <-0.64,1.92,0.81>,<-0.64,1.97,0.81>,0.035 } Gloss(color srgb <0.22,0.42,0.64>) }
union { RB(<-0.50,1.686,0.75>,<-0.38,1.90,0.86>,0.03) cylinder { <-0.44,1.89,0.8>,<-0.44,1.94,0.8>,0.025 } Gloss(color srgb <0.86,0.62,0.25>) }
union { RB(<-0.30,1.686,0.72>,<-0.08,1.86,0.92>,0.008) Gloss(color srgb <0.83,0.84,0.82>) }
difference { union { RB(<0.18,1.686,0.68>,<0.66,1.90,0.96>,0.02) } box { <0.20,1.70,0.70>,<0.64,2,0.94> } texture { pigment { brick color srgb <0.45,0.33,0.20>, color srgb <0.76,0.62,0.42> brick_size <0.05,0.022,0.05> mortar 0.006 } normal { bumps 0.6 scale 0.01 } finish { F_Matte } } }
object { RB(<0.22,1.80,0.71>,<0.62,1.98,0.93>,0.06) Fabric(color srgb <0.62,0.72,0.74>,color srgb <0.78,0.85,0.86>) }
// basket on the dryer and folded towels
union { #declare I=0; #while (I<4) RB(<0.22,0.925+I*0.045,0.20>,<0.50,0.968+I*0.045,0.44>,0.018) #declare I=I+1; #end Fabric(color srgb <0.80,0.76,0.68>,color srgb <0.92,0.89,0.83>) }
object { Outlet(0) translate <-1.1,1.2,-0.003> }
// light
light_source { <0.1,H-0.08,-0.9> color srgb <1,0.94,0.84>*0.5 area_light x*0.6,z*0.6,4,4 adaptive 0 jitter fade_distance 1.7 fade_power 2 }
light_source { <-0.6,1.7,-2.6> color rgb <0.97,1,1.03>*0.22 area_light x*1.2,y*1.2,4,4 adaptive 0 jitter }
light_source { <0.0,2.38,0.45> color srgb <1,0.94,0.84>*0.10 area_light x*0.8,z*0.3,3,3 adaptive 0 jitter fade_distance 1.2 fade_power 2 }
sky_sphere { pigment { color rgb 0.35 } }
