// Half a pole of a twelve-pole disc machine: 15 degrees from the middle of a block to the middle between two.
// variant 0: two magnet discs, upper half of the machine, middle plane z = 0
// variant 1: one magnet disc above a plain steel disc whose surface is z = 0
// variant 2: one magnet disc, nothing below; z = 0 lies as far from the blocks as in variant 1
SetFactory("OpenCASCADE");
DefineConstant[ variant = {0, Name "variant"}, h = {1.5, Name "h"} ]; // h: mesh size at the gap [mm]
General.NumThreads = 1;
Mesh.Algorithm3D = 10;
mm = 1e-3;
half = Pi / 12;
poleRadius = 90*mm; radialLength = 40*mm; width = 20*mm; thickness = 10*mm;
steelInner = 50*mm; steelOuter = 130*mm; steelThickness = 8*mm;
innerCut = 15*mm; outerCut = 220*mm;
If (variant == 0)
  face = 8*mm; bottom = 0;
Else
  face = 16*mm; bottom = -100*mm;
EndIf
top = face + thickness + steelThickness + 90*mm;

Cylinder(1) = {0, 0, bottom, 0, 0, top - bottom, outerCut, half};
Cylinder(2) = {0, 0, bottom, 0, 0, top - bottom, innerCut, half};
BooleanDifference(3) = { Volume{1}; Delete; }{ Volume{2}; Delete; };
Box(4) = {poleRadius - radialLength/2, 0, face, radialLength, width/2, thickness};
Cylinder(5) = {0, 0, face + thickness, 0, 0, steelThickness, steelOuter, half};
Cylinder(6) = {0, 0, face + thickness, 0, 0, steelThickness, steelInner, half};
BooleanDifference(7) = { Volume{5}; Delete; }{ Volume{6}; Delete; };
// A box of air round the block and the gap keeps the fine mesh where the field is wanted
Cylinder(8) = {0, 0, 0, 0, 0, face + thickness, steelOuter - 10*mm, half};
Cylinder(9) = {0, 0, 0, 0, 0, face + thickness, steelInner + 10*mm, half};
BooleanDifference(10) = { Volume{8}; Delete; }{ Volume{9}; Delete; };
parts[] = {3, 4, 7, 10};
If (variant == 1)
  Cylinder(11) = {0, 0, -steelThickness, 0, 0, steelThickness, steelOuter, half};
  Cylinder(12) = {0, 0, -steelThickness, 0, 0, steelThickness, steelInner, half};
  BooleanDifference(13) = { Volume{11}; Delete; }{ Volume{12}; Delete; };
  parts[] += {13};
EndIf
all[] = BooleanFragments{ Volume{parts[]}; Delete; }{};

e = 1e-6;
magnet[] = Volume In BoundingBox{poleRadius - radialLength/2 - e, -e, face - e,
  poleRadius + radialLength/2 + e, width/2 + e, face + thickness + e};
steel[] = Volume In BoundingBox{-1, -e, face + thickness - e, steelOuter + e, 1, face + thickness + steelThickness + e};
If (variant == 1)
  steel[] += Volume In BoundingBox{-1, -e, -steelThickness - e, steelOuter + e, 1, e};
EndIf
gap[] = Volume In BoundingBox{-1, -e, -e, steelOuter - 10*mm + e, 1, face + thickness + e};
gap[] -= magnet[];
air[] = Volume{:};
air[] -= magnet[]; air[] -= steel[];
Physical Volume("magnet", 1) = magnet[];
Physical Volume("steel", 2) = steel[];
Physical Volume("air", 3) = air[];

// Potential zero: plane between poles, outer cuts, and in variant 0 the middle plane
outer[] = Surface In BoundingBox{-1, -1, top - e, 1, 1, top + e};
outer[] += Surface In BoundingBox{-1, -1, bottom - e, 1, 1, bottom + e};
skin[] = Abs(Boundary{ Volume{air[]}; });
For i In {0 : #skin[]-1}
  box[] = BoundingBox Surface{skin[i]};
  // the outer cylinder spans from its chord's foot to outerCut
  If (box[0] > outerCut*Cos(half) - 10*e && box[3] > outerCut - 10*e && box[5] - box[2] > (top - bottom)/2)
    outer[] += {skin[i]};
  EndIf
EndFor
between[] = {};
every[] = Surface{:};
For i In {0 : #every[]-1}
  c[] = BoundingBox Surface{every[i]};
  // a plane through the axis at 15 degrees: lower left and upper right corner both on it
  If (Fabs(c[1] - c[0]*Tan(half)) < 10*e && Fabs(c[4] - c[3]*Tan(half)) < 10*e && c[3] - c[0] > 100*e)
    between[] += {every[i]};
  EndIf
EndFor
Physical Surface("zero", 11) = {outer[], between[]};

Characteristic Length{ PointsOf{ Volume{:}; } } = 14*mm;
Characteristic Length{ PointsOf{ Volume{steel[]}; } } = 3*h*mm;
Characteristic Length{ PointsOf{ Volume{gap[]}; } } = 1.5*h*mm;
Characteristic Length{ PointsOf{ Volume{magnet[]}; } } = h*mm;
Field[1] = Box;
Field[1].VIn = h*mm; Field[1].VOut = 14*mm; Field[1].Thickness = 60*mm;
Field[1].XMin = 64*mm; Field[1].XMax = 116*mm; Field[1].YMin = -1*mm; Field[1].YMax = 32*mm;
Field[1].ZMin = -1*mm; Field[1].ZMax = face + thickness + 1*mm;
Background Field = 1;
