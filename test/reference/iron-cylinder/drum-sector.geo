// Half a pole of a twelve-pole drum, upper half: 15 degrees from the middle of a block to the middle between two, z > 0.
// ring 0 none, 1 ring inside the blocks, 2 ring outside them; sleeve 0 none, 1 outside; half = half length of the iron.
SetFactory("OpenCASCADE");
DefineConstant[ ring = 1, sleeve = 0, ringThickness = 6, halfIron = 30, h = 1 ]; // lengths in mm
General.NumThreads = 1;
Mesh.Algorithm3D = 1;
mm = 1e-3;
half = Pi / 12;
pitchRadius = 50*mm; length = 60*mm; width = 15*mm; thickness = 5*mm;
innerCut = 12*mm; outerCut = 120*mm; top = halfIron*mm + 65*mm;
iron = halfIron*mm;
If (ring == 2)
  r1 = 53.2*mm; r2 = r1 + ringThickness*mm;
Else
  r2 = 47.3*mm; r1 = r2 - ringThickness*mm;
EndIf
s1 = 62*mm; s2 = 65*mm;

Macro Tube
  Cylinder(t) = {0, 0, zb, 0, 0, zt - zb, rb, half};
  Cylinder(t + 1) = {0, 0, zb, 0, 0, zt - zb, ra, half};
  BooleanDifference(t + 2) = { Volume{t}; Delete; }{ Volume{t + 1}; Delete; };
Return

t = 10; zb = 0; zt = top; ra = innerCut; rb = outerCut; Call Tube;
parts[] = {12};
Box(1) = {pitchRadius - thickness/2, 0, 0, thickness, width/2, length/2};
parts[] += {1};
// Air between ring and sleeve, where the mesh is fine
t = 20; zt = length/2 + 20*mm; ra = (ring == 2) ? 40*mm : 47.3*mm; rb = (ring == 2) ? 53.2*mm : 62*mm; Call Tube;
parts[] += {22};
If (ring)
  t = 30; zt = iron; ra = r1; rb = r2; Call Tube;
  parts[] += {32};
EndIf
If (sleeve)
  t = 40; zt = iron; ra = s1; rb = s2; Call Tube;
  parts[] += {42};
EndIf
all[] = BooleanFragments{ Volume{parts[]}; Delete; }{};

e = 1e-6;
magnet[] = Volume In BoundingBox{pitchRadius - thickness/2 - e, -e, -e, pitchRadius + thickness/2 + e, width/2 + e, length/2 + e};
steel[] = {}; cover[] = {};
every[] = Volume{:};
For i In {0 : #every[]-1}
  b[] = BoundingBox Volume{every[i]};
  If (ring && Fabs(b[3] - r2) < 1e-5 && Fabs(b[0] - r1*Cos(half)) < 1e-5 && Fabs(b[5] - iron) < 1e-5)
    steel[] += {every[i]};
  EndIf
  If (sleeve && Fabs(b[3] - s2) < 1e-5 && Fabs(b[0] - s1*Cos(half)) < 1e-5 && Fabs(b[5] - iron) < 1e-5)
    cover[] += {every[i]};
  EndIf
EndFor
Printf("ring parts %g, sleeve parts %g, magnet parts %g", #steel[], #cover[], #magnet[]);
gap[] = {};
For i In {0 : #every[]-1}
  b[] = BoundingBox Volume{every[i]};
  If (b[5] < length/2 + 20*mm + e && b[5] > length/2 + 20*mm - e)
    gap[] += {every[i]};
  EndIf
EndFor
air[] = every[];
air[] -= magnet[]; air[] -= steel[]; air[] -= cover[];
Physical Volume("magnet", 1) = magnet[];
Physical Volume("ring", 2) = steel[];
Physical Volume("air", 3) = air[];
Physical Volume("sleeve", 4) = cover[];

zero[] = {};
faces[] = Surface{:};
For i In {0 : #faces[]-1}
  c[] = BoundingBox Surface{faces[i]};
  If (Fabs(c[1] - c[0]*Tan(half)) < 10*e && Fabs(c[4] - c[3]*Tan(half)) < 10*e && c[3] - c[0] > 10*e && c[5] - c[2] > 10*e)
    zero[] += {faces[i]};
  EndIf
  If (c[2] > top - e)
    zero[] += {faces[i]};
  EndIf
  If (c[0] > outerCut*Cos(half) - 10*e && c[3] > outerCut - 10*e)
    zero[] += {faces[i]};
  EndIf
EndFor
Physical Surface("zero", 11) = zero[];

Characteristic Length{ PointsOf{ Volume{:}; } } = 12*mm;
Characteristic Length{ PointsOf{ Volume{steel[], cover[]}; } } = 2*h*mm;
Characteristic Length{ PointsOf{ Volume{gap[]}; } } = 2*h*mm;
Characteristic Length{ PointsOf{ Volume{magnet[]}; } } = h*mm;
Field[1] = Box;
Field[1].VIn = 1.6*h*mm; Field[1].VOut = 12*mm; Field[1].Thickness = 50*mm;
Field[1].XMin = 38*mm; Field[1].XMax = 65*mm; Field[1].YMin = -1*mm; Field[1].YMax = 20*mm;
Field[1].ZMin = -1*mm; Field[1].ZMax = length/2 + 8*mm;
Background Field = 1;
