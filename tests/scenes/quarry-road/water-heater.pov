#version 3.7;
// New electric water heater in the cellar.
#include "common.inc"
#declare EXPO = 0.3;
Settings_Inside(1.0)
#include "interior.inc"
#include "heater-parts.inc"
Phone(<0.9,4.9,-6.2>,<0.15,3.35,0>,1,70)
object{ union{ Blocks(20,9,214,211,202,0.05,4) } translate <-8,0,1.6> }
object{ union{ Blocks(20,9,208,205,196,0.05,6) } rotate -y*90 translate <-2.7,0,-14> }
object{ union{ Blocks(20,9,206,202,192,0.05,9) } rotate y*90 translate <7,0,5> }
box{<-9,-0.3,-16>,<12,0,3> texture{ T_Cellar_Floor } }
union{ Bx(-9,8.0,-16,12,8.2,3) texture{ T_PineZ } }
union{ #declare K=0; #while (K<9) Bx(-6+K*1.4,7.2,-16,-5.87+K*1.4,8,1.6) #declare K=K+1; #end texture{ T_OldZ } }
// pad, pan, tank
union{ RBx(-1.3,0,-1.3,1.3,0.18,1.3,0.03) texture{ T_Concrete } }
difference{ Rod(<0,0.18,0>,<0,0.42,0>,1.08) Rod(<0,0.2,0>,<0,1,0>,1.05) texture{ T_Galv } }
union{ object{ union{ Tank() } translate y*0.2 } }
// label
union{ intersection{ difference{ Rod(<0,0,0>,<0,0.62,0>,0.857) Rod(<0,-1,0>,<0,3,0>,0.83) } Bx(-0.34,0,-1,0.34,2,0) } rotate -y*0 translate y*2.62 texture{ Matte(240,240,234) } }
union{ #declare K=0; #while (K<6) intersection{ difference{ Rod(<0,0.06+K*0.09,0>,<0,0.085+K*0.09,0>,0.8585) Rod(<0,-1,0>,<0,3,0>,0.83) } Bx(-0.28,0,-1,(mod(K*7,5)*0.05),2,0) } #declare K=K+1; #end translate y*2.62 texture{ Matte(70,70,74) } }
// pipes
union{ Rod(<-0.4,5.3,0>,<-0.4,7.05,0>,0.06) Rod(<0.4,5.3,0>,<0.4,7.05,0>,0.06)
  Rod(<-0.4,7.05,0>,<-2.7,7.05,0>,0.06) Rod(<0.4,7.05,0>,<0.4,7.05,1.6>,0.06) Rod(<0.4,6.85,0.0>,<7,6.85,0.0>,0.06)
  sphere{<-0.4,7.05,0>,0.085} sphere{<0.4,7.05,0>,0.085}
  Rod(<-0.4,6.1,0>,<-0.4,6.3,0>,0.1) Rod(<0.4,6.1,0>,<0.4,6.3,0>,0.085) Rod(<-0.4,6.6,0>,<-1.3,6.6,0>,0.05)
  // relief pipe
  Rod(<0.85,4.9,-0.3>,<1.08,4.9,-0.36>,0.055) Rod(<1.08,4.9,-0.36>,<1.08,0.6,-0.36>,0.055) sphere{<1.08,4.9,-0.36>,0.075}
  texture{ T_Copper } }
union{ Rod(<-0.4,5.35,0>,<-0.4,5.6,0>,0.09) Rod(<0.4,5.35,0>,<0.4,5.6,0>,0.09) Rod(<-0.4,5.95,0>,<-0.4,6.05,0>,0.11) RBx(0.68,4.8,-0.42,0.98,5.0,-0.2,0.03) Rod(<0.86,4.98,-0.31>,<0.86,5.15,-0.31>,0.04)
  Rod(<0,0.85,-0.84>,<0,0.85,-1.1>,0.05) Rod(<0,0.85,-1.1>,<0,0.7,-1.14>,0.06) texture{ T_Brass } }
union{ RBx(-0.62,5.98,-0.04,-0.36,6.03,0.04,0.015) Rod(<0,0.9,-1.0>,<0,0.97,-1.0>,0.1) texture{ Satin(190,44,36) } }
union{ RBx(-0.42,6.18,-0.04,-0.1,6.23,0.04,0.015) texture{ Satin(44,88,160) } }
// expansion tank
union{ sphere{0,0.4 scale <1,0.9,1> translate <-1.3,6.0,0>} Rod(<-1.3,5.3,0>,<-1.3,6.0,0>,0.4) sphere{0,0.4 scale <1,0.9,1> translate <-1.3,5.3,0>} texture{ Satin(44,84,140) } }
union{ Rod(<-1.3,6.3,0>,<-1.3,6.6,0>,0.05) texture{ T_Brass } }
// conduit and junction box
union{ Rod(<0,5.35,0.3>,<0,5.5,0.3>,0.09) 
  #declare K=0; #while (K<40) torus{0.055,0.02 rotate z*90*0 translate <0.02*K,5.5+1.3*sin(K/39*pi/2),0.3+1.2*K/39>} #declare K=K+1; #end
  texture{ T_Galv } }
union{ RBx(0.95,4.4,1.35,1.75,5.5,1.62,0.03) texture{ Satin(150,154,156) } }
union{ Rod(<1.35,5.5,1.5>,<1.35,7.3,1.5>,0.06) Bx(1.7,4.8,1.3,1.8,5.1,1.5) texture{ T_Galv } }
// laundry tub and shelf on the right
union{ difference{ RBx(2.7,1.5,-0.4,4.9,2.9,1.4,0.05) RBx(2.85,1.65,-0.25,4.75,3.5,1.25,0.05) } Bx(2.8,0,-0.3,2.95,1.5,-0.15) Bx(4.65,0,-0.3,4.8,1.5,-0.15) Bx(2.8,0,1.15,2.95,1.5,1.3) Bx(4.65,0,1.15,4.8,1.5,1.3) texture{ Satin(214,214,208) } }
union{ Rod(<3.6,3.5,1.6>,<3.6,3.5,0.6>,0.05) Rod(<3.6,3.5,0.6>,<3.6,3.3,0.55>,0.05) Rod(<3.4,3.5,1.3>,<3.4,3.7,1.3>,0.06) Rod(<3.8,3.5,1.3>,<3.8,3.7,1.3>,0.06) texture{ T_Chrome } }
union{ Bx(2.4,5.0,0.6,6.8,5.1,1.6) Bx(2.6,4.5,0.7,2.7,5,1.6) Bx(5.9,4.5,0.7,6,5,1.6) texture{ T_PineX } }
union{ Rod(<3,5.1,1.1>,<3,5.75,1.1>,0.22) texture{ Satin(60,110,130) } } union{ Rod(<3.6,5.1,1.1>,<3.6,5.6,1.1>,0.27) texture{ Satin(212,208,196) } } union{ RBx(4.1,5.1,0.8,5,5.7,1.4,0.03) texture{ Matte(176,138,92) } }
Lamp_Light(<2.2,7.0,-3.6>,0.5,3.4,Warm,3.5)
Win_Light(<6.8,6.0,-5>,<-1,-0.35,0.5>,3,1.4,z,3.6,Day)
