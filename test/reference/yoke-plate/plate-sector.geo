// Half a pole of a twelve-pole disc machine on thin plates: 15 degrees from the middle of a block to the middle
// between two. A polar box of fine mesh spans the gap, the block and the plate.
// variant 0: two magnet discs, upper half of the machine, middle plane z = 0
// variant 1: one magnet disc above a plain steel disc whose surface is z = 0
// variant 2: one magnet disc, nothing below; z = 0 lies as far from the blocks as in variant 1
SetFactory("OpenCASCADE");
// h: mesh size at the gap, t: plate behind the blocks, plain: plate opposite, inner and outer: plate radii [mm]
DefineConstant[ variant = {0, Name "variant"}, h = {2, Name "h"}, t = {5, Name "t"}, plain = {4, Name "plain"},
  inner = {65, Name "inner"}, outer = {115, Name "outer"} ];
General.NumThreads = 1;
Mesh.Algorithm3D = 10;
mm = 1e-3;
half = Pi / 12;
poleRadius = 90*mm; radialLength = 40*mm; width = 20*mm; thickness = 10*mm;
innerCut = 12*mm; outerCut = 230*mm;
If (variant == 0)
  face = 8*mm; bottom = 0;
Else
  face = 16*mm; bottom = -100*mm;
EndIf
back = face + thickness;
top = back + t*mm + 100*mm;

Cylinder(1) = {0, 0, bottom, 0, 0, top - bottom, outerCut, half};
Cylinder(2) = {0, 0, bottom, 0, 0, top - bottom, innerCut, half};
BooleanDifference(3) = { Volume{1}; Delete; }{ Volume{2}; Delete; };
Box(4) = {poleRadius - radialLength/2, 0, face, radialLength, width/2, thickness};
Cylinder(5) = {0, 0, back, 0, 0, t*mm, outer*mm, half};
Cylinder(6) = {0, 0, back, 0, 0, t*mm, inner*mm, half};
BooleanDifference(7) = { Volume{5}; Delete; }{ Volume{6}; Delete; };
Cylinder(8) = {0, 0, 0, 0, 0, back, 120*mm, half};
Cylinder(9) = {0, 0, 0, 0, 0, back, 60*mm, half};
BooleanDifference(10) = { Volume{8}; Delete; }{ Volume{9}; Delete; };
parts[] = {3, 4, 7, 10};
If (variant == 1)
  Cylinder(11) = {0, 0, -plain*mm, 0, 0, plain*mm, outer*mm, half};
  Cylinder(12) = {0, 0, -plain*mm, 0, 0, plain*mm, inner*mm, half};
  BooleanDifference(13) = { Volume{11}; Delete; }{ Volume{12}; Delete; };
  parts[] += {13};
EndIf
all[] = BooleanFragments{ Volume{parts[]}; Delete; }{};

e = 1e-6;
magnet[] = Volume In BoundingBox{poleRadius - radialLength/2 - e, -e, face - e,
  poleRadius + radialLength/2 + e, width/2 + e, back + e};
steel[] = Volume In BoundingBox{-1, -e, back - e, outer*mm + e, 1, back + t*mm + e};
If (variant == 1)
  steel[] += Volume In BoundingBox{-1, -e, -plain*mm - e, outer*mm + e, 1, e};
EndIf
gap[] = Volume In BoundingBox{-1, -e, -e, 120*mm + e, 1, back + e};
gap[] -= magnet[];
air[] = Volume{:};
air[] -= magnet[]; air[] -= steel[];
Physical Volume("magnet", 1) = magnet[];
Physical Volume("steel", 2) = steel[];
Physical Volume("air", 3) = air[];

// Potential zero: plane between poles, outer cuts, and in variant 0 the middle plane
far[] = Surface In BoundingBox{-1, -1, top - e, 1, 1, top + e};
far[] += Surface In BoundingBox{-1, -1, bottom - e, 1, 1, bottom + e};
skin[] = Abs(Boundary{ Volume{air[]}; });
For i In {0 : #skin[]-1}
  box[] = BoundingBox Surface{skin[i]};
  // the outer cylinder spans from its chord's foot to outerCut
  If (box[0] > outerCut*Cos(half) - 10*e && box[3] > outerCut - 10*e && box[5] - box[2] > (top - bottom)/2)
    far[] += {skin[i]};
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
Physical Surface("zero", 11) = {far[], between[]};

Characteristic Length{ PointsOf{ Volume{:}; } } = 16*mm;
Field[1] = Box;
Field[1].VIn = h*mm; Field[1].VOut = 16*mm; Field[1].Thickness = 70*mm;
Field[1].XMin = 60*mm; Field[1].XMax = 119*mm; Field[1].YMin = -1*mm; Field[1].YMax = 32*mm;
Field[1].ZMin = (variant == 1) ? -plain*mm - 0.5*mm : -0.5*mm; Field[1].ZMax = back + t*mm + 0.5*mm;
Background Field = 1;
Mesh.CharacteristicLengthFromPoints = 0;
Mesh.CharacteristicLengthExtendFromBoundary = 0;
