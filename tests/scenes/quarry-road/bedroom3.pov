#version 3.7;
// Bedroom 3 in the upper half storey, sloped ceilings on both sides.
#include "common.inc"
#declare EXPO = 0.2;
Settings_Inside(1.0)
#include "interior.inc"
Phone(<6.9,4.9,-3.2>,<5.3,3.35,8>,0,72)
#declare T_Wall = texture{ Paint(214,221,214) }
#declare T_Ceil = texture{ Paint(240,239,233) }
#declare T_Trim = texture{ Satin(240,238,231) }
Outside_View(1,-11)
Back_Trees(1,-13,31)
Win_Light(<6,4.6,9.9>,<0,-0.35,-1>,2.6,3.6,x,5.6,Day)
Lamp_Light(<6,7.2,0>,1.0,1.3,Warm,4)
Lamp_Light(<6,6.2,-3.6>,2.0,1.6,Day,4)
// room x 0..12, knee wall 3.6 high, slope up to y = 7.6 at x = 3.9 / 8.1
difference{ Bx(-0.5,0,10,12.5,8.5,10.5) Bx(4.6,2.4,9,7.4,6.4,11) texture{ T_Wall } }
object{ union{ Window(2.8,4.0,T_Trim) } translate <6,2.4,10> }
union{ Bx(-0.4,0,-4,0,3.7,10) Bx(12,0,-4,12.4,3.7,10) Bx(-0.5,0,-4.5,12.5,8.5,-4) texture{ T_Wall } }
#declare SlopeL = union{
  triangle{<0,3.6,-4>,<0,3.6,10>,<3.9,7.6,-4>} triangle{<3.9,7.6,-4>,<0,3.6,10>,<3.9,7.6,10>} }
object{ SlopeL texture{ T_Ceil } }
object{ SlopeL scale <-1,1,1> translate x*12 texture{ T_Ceil } }
union{ Bx(3.9,7.6,-4,8.1,7.9,10) texture{ T_Ceil } }
// battens where slope meets wall and ceiling
union{ Bx(0,3.54,-4,0.05,3.68,10) Bx(11.95,3.54,-4,12,3.68,10) texture{ T_Trim } }
object{ union{ Base_X(0,12,0.5,T_Trim) } translate z*10 }
object{ union{ Base_X(-4,10,0.5,T_Trim) } rotate -y*90 }
object{ union{ Base_X(-10,4,0.5,T_Trim) } rotate y*90 translate x*12 }
// little door to the eaves on the left
object{ union{ Door_Trim(2.2,2.7,T_Trim) } rotate -y*90 translate <0.0,0.1,1.2> }
union{ Bx(0.01,0.12,1.2,0.05,2.8,3.4) texture{ T_Trim } }
union{ Bx(0.04,0.5,1.5,0.07,2.4,3.1) texture{ Satin(230,228,220) } }
union{ sphere{<0.14,1.6,1.35>,0.06} Rod(<0,1.6,1.35>,<0.12,1.6,1.35>,0.03) texture{ T_Brass } }
Planks(0,12,-4,10,0,0.36,5,Pine_Set,0.008,31)
// bed, head against the gable wall at the right of the window
union{
  union{ RBx(7.9,0.6,4.0,11.6,1.0,9.7,0.03) Bx(7.9,0,4.0,8.1,1.9,4.2) Bx(11.4,0,4.0,11.6,1.9,4.2) RBx(7.9,1.0,4.02,11.6,1.7,4.16,0.03)
    Bx(7.85,0,9.6,8.05,3.5,9.8) Bx(11.45,0,9.6,11.65,3.5,9.8) RBx(7.9,1.2,9.64,11.6,3.3,9.76,0.03) texture{ T_OakX } }
  union{ RBx(8.0,0.95,4.2,11.5,1.75,9.6,0.15) texture{ Cloth(238,234,226) } }
}
union{
  object{ Round_Box_Union(<7.84,0.95,4.15>,<11.66,1.88,8.0>,0.16) }
  texture{ pigment{ checker pigment{ gradient z scale 0.35 color_map{[0 C(92,116,128)][0.5 C(92,116,128)][0.5 C(226,218,200)][1 C(226,218,200)]} } pigment{ bozo scale 0.1 color_map{[0 C(178,108,84)][1 C(196,128,100)]} } scale 0.7 translate <0.05,0.3,0.1> } normal{ average normal_map{[1 bumps 0.6 scale 0.25][0.6 bumps 0.3 scale 0.02]} } finish{ diffuse 0.82 } } }
union{ object{ Round_Box_Union(<8.15,1.75,7.5>,<11.35,1.98,8.3>,0.1) } texture{ Cloth(236,230,218) } }
union{ superellipsoid{<0.6,0.6> scale <0.82,0.27,0.5> rotate x*-24 translate <8.95,2.08,8.95>} superellipsoid{<0.6,0.6> scale <0.82,0.27,0.5> rotate x*-24 translate <10.6,2.08,8.95>} texture{ Cloth(240,238,232) } }
union{ superellipsoid{<0.6,0.6> scale <0.55,0.2,0.42> rotate x*-42 translate <9.8,2.25,8.4>} texture{ Cloth(204,140,70) } }
// night stand and lamp left of the bed
union{ RBx(6.35,1.8,8.7,7.65,1.92,9.9,0.02) Bx(6.45,1.1,8.8,7.55,1.8,9.9) Bx(6.45,0,8.8,6.55,1.2,8.9) Bx(7.45,0,8.8,7.55,1.2,8.9) Bx(6.45,0,9.8,6.55,1.2,9.9) Bx(7.45,0,9.8,7.55,1.2,9.9) texture{ Satin(226,222,212) } }
union{ Bx(6.53,1.2,8.77,7.47,1.72,8.82) texture{ Satin(216,212,202) } } union{ sphere{<7,1.46,8.72>,0.05} texture{ T_Brass } }
union{ sphere{<7,2.16,9.3>,0.23} Rod(<7,1.92,9.3>,<7,2.7,9.3>,0.03) texture{ Satin(70,98,110) } }
difference{ cone{<7,2.5,9.3>,0.42,<7,3.1,9.3>,0.28} cone{<7,2.4,9.3>,0.41,<7,3.2,9.3>,0.26} texture{ pigment{ C(240,226,198) } finish{ diffuse 0.6 emission 0.3 } } }
light_source{ <7,2.9,9.3> Warm*0.35*EXPO fade_distance 2 fade_power 2 }
// low dresser on the left under the slope
union{ RBx(0.12,2.55,5.0,1.75,2.68,9.0,0.02) Bx(0.16,0.35,5.06,1.7,2.56,8.94) Bx(0.2,0,5.1,0.35,0.4,5.25) Bx(1.5,0,5.1,1.65,0.4,5.25) Bx(0.2,0,8.75,0.35,0.4,8.9) Bx(1.5,0,8.75,1.65,0.4,8.9) texture{ T_OakZ } }
#declare K=0; #while (K<6)
  #declare Y0=0.45+0.7*int(K/2); #declare Z0=5.12+1.92*mod(K,2);
  union{ RBx(1.66,Y0,Z0,1.74,Y0+0.62,Z0+1.84,0.015) texture{ T_OakZ translate <K*3,K,K*2> } }
  union{ sphere{<1.8,Y0+0.31,Z0+0.5>,0.05} sphere{<1.8,Y0+0.31,Z0+1.34>,0.05} texture{ T_Brass } }
#declare K=K+1; #end
object{ union{ Plant_Pot(7,0.6,texture{ Matte(190,106,70) }) } scale 0.75 translate <0.9,2.68,8.3> }
union{ union{ Books(0,0.9,0,0,14) } rotate -y*90 translate <1.1,2.68,5.6> }
object{ union{ Bowl(0.32,texture{ Satin(200,190,168) }) } translate <1.0,2.68,7.2> }
// rug
union{ RBx(3.2,0,2.2,7.4,0.035,7.2,0.015) texture{ pigment{ boxed scale <2.1,1,2.5> translate <5.3,0,4.7> color_map{[0 C(196,120,90)][0.1 C(196,120,90)][0.1 C(226,214,190)][0.35 C(226,214,190)][0.35 C(90,112,120)][0.45 C(90,112,120)][0.45 C(222,210,186)][1 C(222,210,186)]} } normal{ bumps 0.5 scale 0.03 } finish{ diffuse 0.8 } } }
union{ #declare K=0; #while (K<40) Rod(<3.25+K*0.105,0.012,2.2>,<3.25+K*0.105,0.012,2.02>,0.012) #declare K=K+1; #end texture{ Matte(226,214,190) } }
// chair by the window left
union{ RBx(2.9,1.45,8.1,4.3,1.56,9.4,0.03) cone{<3.0,0,8.2>,0.05,<3.05,1.5,8.25>,0.07} cone{<4.2,0,8.2>,0.05,<4.15,1.5,8.25>,0.07} cone{<3.0,0,9.4>,0.05,<3.05,1.5,9.3>,0.07} cone{<4.2,0,9.4>,0.05,<4.15,1.5,9.3>,0.07}
  Rod(<3.0,1.5,9.3>,<2.95,3.1,9.5>,0.06) Rod(<4.2,1.5,9.3>,<4.25,3.1,9.5>,0.06) RBx(2.95,2.8,9.4,4.25,3.1,9.5,0.03) Rod(<3.4,1.5,9.32>,<3.4,2.85,9.45>,0.035) Rod(<3.8,1.5,9.32>,<3.8,2.85,9.45>,0.035)
  RBx(3,0.7,8.3,3.05,0.76,9.3,0.01) RBx(4.15,0.7,8.3,4.2,0.76,9.3,0.01) texture{ Satin(64,82,92) } }
#macro Curtain(X) union{ #local K=0; #while (K<9) cone{<X+K*0.08,1.7,9.8+0.05*mod(K,2)>,0.08,<X+K*0.075,6.75,9.8+0.03*mod(K,2)>,0.06} #local K=K+1; #end texture{ pigment{ C(236,230,216) } finish{ diffuse 0.7 emission 0.04 } } } #end
Curtain(4.05) Curtain(7.3)
union{ Rod(<3.8,6.8,9.8>,<8.2,6.8,9.8>,0.035) texture{ T_Black } }
object{ union{ Globe_Lamp(0.42,0.5) } translate <6,7.6,1.5> }
object{ union{ Outlet() } translate <2.2,1.1,10> }
