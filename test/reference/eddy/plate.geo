// One pole pitch of a row of alternating magnets without iron, and a plate that moves over it (2-D): magnet middle x = 0,
// magnets 0 … 10 mm high, plate from 15 mm up, `thick` thick. The sides repeat with the opposite sign.
DefineConstant[ thick = {3, Name "thick"}, h = {1, Name "h"} ];
mm = 1e-3;
L = 15*mm; w = 9*mm; top = 10*mm; gap = 15*mm; far = 90*mm;
s = 0.5*h*mm; p = 0.35*h*mm; S = 4*h*mm; t = thick*mm;
Point(1) = {-L, -far, 0, S}; Point(2) = {L, -far, 0, S};
Point(3) = {-L, 0, 0, s}; Point(4) = {-w, 0, 0, s/2}; Point(5) = {w, 0, 0, s/2}; Point(6) = {L, 0, 0, s};
Point(7) = {-L, top, 0, s}; Point(8) = {-w, top, 0, s/2}; Point(9) = {w, top, 0, s/2}; Point(10) = {L, top, 0, s};
Point(11) = {-L, gap, 0, p}; Point(12) = {L, gap, 0, p};
Point(13) = {-L, gap+t, 0, p}; Point(14) = {L, gap+t, 0, p};
Point(15) = {-L, far, 0, S}; Point(16) = {L, far, 0, S};
Line(1) = {1, 2}; Line(2) = {4, 5}; Line(3) = {5, 9}; Line(4) = {9, 8}; Line(5) = {8, 4};
Line(6) = {11, 12}; Line(7) = {13, 14}; Line(8) = {15, 16};
Line(21) = {1, 3}; Line(22) = {3, 7}; Line(23) = {7, 11}; Line(24) = {11, 13}; Line(25) = {13, 15};
Line(31) = {2, 6}; Line(32) = {6, 10}; Line(33) = {10, 12}; Line(34) = {12, 14}; Line(35) = {14, 16};
Curve Loop(1) = {2, 3, 4, 5}; Plane Surface(1) = {1};
Curve Loop(2) = {1, 31, 32, 33, -6, -23, -22, -21}; Plane Surface(2) = {2, 1};
Curve Loop(3) = {6, 34, -7, -24}; Plane Surface(3) = {3};
Curve Loop(4) = {7, 35, -8, -25}; Plane Surface(4) = {4};
Periodic Curve {31, 32, 33, 34, 35} = {21, 22, 23, 24, 25} Translate {2*L, 0, 0};
Physical Surface("magnet", 1) = {1};
Physical Surface("air", 2) = {2, 4};
Physical Surface("plate", 3) = {3};
Physical Curve("far", 11) = {1, 8};
Physical Curve("left", 12) = {21, 22, 23, 24, 25};
Physical Curve("right", 13) = {31, 32, 33, 34, 35};
