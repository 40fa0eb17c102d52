// A conductor in air: round of diameter d, or a strip d wide, t thick, with corners of radius c. All in millimetres.
DefineConstant[ kind = {0, Name "kind"}, h = {1, Name "h"} ];
mm = 1e-3;
d = 2*mm; w = 4*mm; t = 1.5*mm; c = 0.5*mm; far = 60*mm;
s = 0.06*h*mm;
If(kind == 0)
  r = d/2;
  Point(1) = {0, 0, 0, s};
  Point(2) = {r, 0, 0, s}; Point(3) = {0, r, 0, s}; Point(4) = {-r, 0, 0, s}; Point(5) = {0, -r, 0, s};
  Circle(1) = {2, 1, 3}; Circle(2) = {3, 1, 4}; Circle(3) = {4, 1, 5}; Circle(4) = {5, 1, 2};
  Curve Loop(1) = {1, 2, 3, 4};
Else
  a = w/2; b = t/2;
  Point(1) = {0, 0, 0, s};
  Point(10) = {a, -b+c, 0, s}; Point(11) = {a, b-c, 0, s}; Point(12) = {a-c, b-c, 0, s}; Point(13) = {a-c, b, 0, s};
  Point(14) = {-a+c, b, 0, s}; Point(15) = {-a+c, b-c, 0, s}; Point(16) = {-a, b-c, 0, s}; Point(17) = {-a, -b+c, 0, s};
  Point(18) = {-a+c, -b+c, 0, s}; Point(19) = {-a+c, -b, 0, s}; Point(20) = {a-c, -b, 0, s}; Point(21) = {a-c, -b+c, 0, s};
  Line(1) = {10, 11}; Circle(2) = {11, 12, 13}; Line(3) = {13, 14}; Circle(4) = {14, 15, 16};
  Line(5) = {16, 17}; Circle(6) = {17, 18, 19}; Line(7) = {19, 20}; Circle(8) = {20, 21, 10};
  Curve Loop(1) = {1, 2, 3, 4, 5, 6, 7, 8};
EndIf
S = 4*h*mm;
Point(32) = {far, 0, 0, S}; Point(33) = {0, far, 0, S}; Point(34) = {-far, 0, 0, S}; Point(35) = {0, -far, 0, S};
Circle(31) = {32, 1, 33}; Circle(32) = {33, 1, 34}; Circle(33) = {34, 1, 35}; Circle(34) = {35, 1, 32};
Curve Loop(2) = {31, 32, 33, 34};
Plane Surface(1) = {1};
Plane Surface(2) = {2, 1};
Physical Surface("metal", 1) = {1};
Physical Surface("air", 2) = {2};
Physical Curve("far", 11) = {31, 32, 33, 34};
