import { again, body, fitting, line, part, type View } from './view.js';

/** A rowboat seen from starboard, an oar stowed over its stern. */
export const rowboatSide: View = {
  name: 'side',
  width: 500,
  height: 156,
  marks: [
    fitting('M 6 26 C 2 32 4 38 10 40 L 50 50 L 200 84 L 201 80 L 54 46 C 44 36 22 26 6 26 Z'),
    line('M 14 34 L 50 46', 'faint'),
    fitting('M 78 138 L 148 139 L 92 150 L 82 150 Z'),
    body(
      'M 40 52 C 110 76 190 82 260 80 C 340 78 420 56 478 26 C 478 66 456 108 420 132 C 404 140 380 142 350 142 L 76 138 Z',
    ),
    part(
      'hull below waterline',
      'M 430.7 124 C 427.3 126.8 423.7 129.5 420 132 C 404 140 380 142 350 142 L 76 138 L 70.1 124 Z',
      392,
      133,
    ),
    part('waterline', 'M 438.4 117 C 436 119.4 433.4 121.8 430.7 124 L 70.1 124 L 67.2 117 Z', 412, 120.5),
    line('M 44 61 C 114 84 192 90 260 88 C 340 86 418 66 477.4 37'),
    line('M 48 70 C 116 92 194 98 262 96 C 340 94 414 76 475 48', 'faint'),
    part(
      'seams and welds',
      'M 52.5 82 C 118 102 195 108 264 106 C 340 104 410 88 470.5 62 L 468.5 67 C 410 92 340 108.5 264 110.5 C 195 112.5 118 107 54.5 87 Z',
      410,
      90,
    ),
    again('transom', 'M 40 52 L 46 54 L 81 138 L 76 138 Z'),
    fitting('M 218 80 L 220 73 L 236 73 L 238 80 Z'),
    line('M 224 73 L 223 63 M 232 73 L 233 63', 'outline'),
    line('M 462 48 L 468 45 L 466 52 Z'),
  ],
};
