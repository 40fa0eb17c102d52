// Half a pole pitch and half the height of two facing arrays between ideal iron (2-D): pole centre x = 0,
// middle between poles x = 31.4 mm; gap middle y = 0, magnet 8 … 18 mm, iron surface y = 18 mm.
DefineConstant[ h = {1, Name "h"} ];
mm = 1e-3;
L = 31.4*mm; w = 15*mm; g = 8*mm; H = 18*mm;
s = 0.4*h*mm;
e = 0.1*h*mm; // at the magnet's corners
Point(1) = {0, 0, 0, s}; Point(2) = {w, 0, 0, s}; Point(3) = {L, 0, 0, s};
Point(4) = {0, g, 0, s}; Point(5) = {w, g, 0, e}; Point(6) = {L, H, 0, s};
Point(7) = {0, H, 0, s}; Point(8) = {w, H, 0, e}; Point(9) = {L, g, 0, s};
Line(1) = {1, 2}; Line(2) = {2, 3}; Line(3) = {3, 9}; Line(4) = {6, 8}; Line(5) = {8, 7};
Line(6) = {7, 4}; Line(7) = {4, 1}; Line(8) = {4, 5}; Line(9) = {5, 8};
Line(10) = {9, 6}; Line(11) = {5, 9};
Curve Loop(1) = {8, 9, 5, 6}; Plane Surface(1) = {1};
Curve Loop(2) = {1, 2, 3, -11, -8, 7}; Plane Surface(2) = {2};
Curve Loop(3) = {11, 10, 4, -9}; Plane Surface(3) = {3};
Physical Surface("magnet", 1) = {1};
Physical Surface("gap", 2) = {2};
Physical Surface("between", 3) = {3};
// Potential zero: gap middle, middle between poles, ideal iron
Physical Curve("zero", 11) = {1, 2, 3, 10, 4, 5};
