#version 3.7;
// Rating label of the water heater, close.
#include "common.inc"
#declare EXPO = 0.34;
Settings_Inside(1.0)
#include "interior.inc"
#include "heater-parts.inc"
Phone(<0.10,2.86,-1.62>,<0.015,2.9,-0.85>,0,52)
object{ union{ Blocks(20,9,214,211,202,0.05,4) } translate <-8,0,1.6> }
object{ union{ Tank() } translate y*0.2 }
union{ Bx(-9,-0.1,-9,9,0,3) texture{ T_Cellar_Floor } }
union{ Bx(-9,8,-9,9,8.1,3) texture{ T_PineX } }
#declare LY = 2.68;
#macro Strip(X0,X1,Y0,Y1,R)
  intersection{ difference{ Rod(<0,Y0,0>,<0,Y1,0>,R) Rod(<0,-1,0>,<0,9,0>,0.84) } plane{ -x,0 rotate y*(-degrees(X0/0.857)) } plane{ x,0 rotate y*(-degrees(X1/0.857)) } Bx(-1,0,-1,1,9,0) }
#end
// sheet, frame and rules; lengths along the curve
union{ Strip(-0.34,0.34,2.64,3.16,0.855) texture{ pigment{ C(240,240,235) } finish{ diffuse 0.8 specular 0.15 roughness 0.05 } } }
union{ Strip(-0.325,0.325,3.14,3.147,0.8556) Strip(-0.325,0.325,2.653,2.66,0.8556) Strip(-0.325,-0.318,2.653,3.147,0.8556) Strip(0.318,0.325,2.653,3.147,0.8556)
  Strip(-0.325,0.325,3.027,3.033,0.8556) Strip(-0.325,0.325,2.934,2.938,0.8556) Strip(-0.325,0.325,2.841,2.845,0.8556) Strip(-0.325,0.325,2.748,2.752,0.8556)
  texture{ Matte(40,42,46) } }
Curved_Text("WATER HEATER",0.066,0.8555,3.064,0,0.049)
Curved_Text("TYPE   ELECTRIC    ",0.052,0.8555,2.964,0,0.0318)
Curved_Text("CAP    50 GAL      ",0.052,0.8555,2.871,0,0.0318)
Curved_Text("SERIAL X26020417   ",0.052,0.8555,2.778,0,0.0318)
Curved_Text("MFD    2026-01     ",0.052,0.8555,2.686,0,0.0318)
Lamp_Light(<1.5,6.8,-4.6>,0.6,3.4,Warm,3.2)
Win_Light(<-4.5,5.0,-5>,<1,-0.35,0.9>,2.4,2,z,3.0,Day)
