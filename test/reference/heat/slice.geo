// A winding as a smeared body between two layers of its support, with casting beside it or without: x goes through it
// from the face near the magnets, y along the face. Lengths in metres. Seen in a plane, or as a ring round the y axis.
DefineConstant[ x0 = 0, cover = 1e-3, depth = 12e-3, before = 6e-3, width = 18e-3, after = 6e-3, h = 0.5e-3 ];
xs[] = {x0, x0 + cover, x0 + cover + depth, x0 + 2*cover + depth};
ys[] = {0, width}; sort[] = {1};
If (before > 0)
  ys[] = {-before, 0, width, width + after}; sort[] = {2, 1, 2};
EndIf
rows = #sort[];
For j In {0:rows}
  For i In {0:3}
    Point(100*j + i + 1) = {xs[i], ys[j], 0, h};
  EndFor
EndFor
For j In {0:rows}
  For i In {0:2}
    Line(1000 + 100*j + i) = {100*j + i + 1, 100*j + i + 2};
  EndFor
EndFor
For j In {0:rows-1}
  For i In {0:3}
    Line(2000 + 100*j + i) = {100*j + i + 1, 100*(j + 1) + i + 1};
  EndFor
EndFor
pack[] = {}; layers[] = {}; casting[] = {}; nearCasting[] = {}; farCasting[] = {};
For j In {0:rows-1}
  For i In {0:2}
    Curve Loop(100*j + i + 1) = {1000 + 100*j + i, 2000 + 100*j + i + 1, -(1000 + 100*(j + 1) + i), -(2000 + 100*j + i)};
    Plane Surface(100*j + i + 1) = {100*j + i + 1};
    If (sort[j] == 2)
      casting[] += {100*j + i + 1};
    ElseIf (i == 1)
      pack[] += {100*j + i + 1};
    Else
      layers[] += {100*j + i + 1};
    EndIf
  EndFor
  If (sort[j] == 2)
    nearCasting[] += {2000 + 100*j}; farCasting[] += {2003 + 100*j};
  Else
    Physical Curve("near cover", 11) = {2000 + 100*j};
    Physical Curve("near pack", 12) = {2001 + 100*j};
    Physical Curve("far pack", 13) = {2002 + 100*j};
    Physical Curve("far cover", 14) = {2003 + 100*j};
    If (rows == 1)
      Physical Curve("ends", 17) = {1000, 1001, 1002, 1100, 1101, 1102};
    EndIf
  EndIf
EndFor
Physical Surface("pack", 1) = {pack[]};
Physical Surface("covers", 2) = {layers[]};
If (rows > 1)
  Physical Surface("casting", 3) = {casting[]};
  Physical Curve("near casting", 15) = {nearCasting[]};
  Physical Curve("far casting", 16) = {farCasting[]};
EndIf
