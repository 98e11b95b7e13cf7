import { oval } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

/** A personal watercraft, seen from starboard. */
export const personalWatercraftSide: View = {
  name: 'side',
  width: 500,
  height: 220,
  marks: [
    line('M 282 42 L 300 26 L 316 24 M 296 30 L 288 24', 'outline'),
    fitting('M 110 96 C 104 74 116 64 150 62 L 206 58 C 236 56 250 62 262 74 L 284 96 Z'),
    line('M 196 59 C 204 70 208 82 208 96 M 118 84 C 160 76 230 76 270 86', 'faint'),
    body('M 262 100 C 264 78 270 52 288 44 C 306 38 330 44 350 54 C 396 74 448 92 478 106 L 470 116 L 262 116 Z'),
    line('M 288 44 C 300 58 340 80 420 96 M 300 41 L 316 34 L 334 46', 'detail'),
    body(
      'M 70 108 C 74 100 84 96 98 96 L 300 98 C 372 98 438 102 480 106 C 470 128 448 146 420 160 C 398 172 366 178 324 178 L 92 178 C 82 178 78 172 76 164 Z',
    ),
    line('M 72 114 C 180 122 340 122 476 112', 'detail'),
    line('M 74 121 C 180 129 340 129 470 120', 'faint'),
    part(
      'hull below waterline',
      'M 76.5 158 L 423.5 158 L 420 160 C 398 172 366 178 324 178 L 92 178 C 82 178 78 172 76.6 166 Z',
      350,
      168,
    ),
    part('waterline', 'M 75.4 150 L 437 150 L 423.5 158 L 76.2 158 Z', 400, 154),
    part('seams and welds', 'M 72 110 C 180 117 340 117 479 108 L 477 112 C 340 122 180 122 71.5 114.5 Z', 366, 115.5),
    fitting('M 96 86 L 108 86 L 106 98 L 96 98 Z'),
    part(
      'mooring lines',
      'M 462 104 C 474 100 486 108 484 118 C 482 126 472 124 470 116 C 468 110 464 110 460 109 Z',
      478,
      118,
    ),
    again('transom', 'M 72 122 L 82 122 L 88 166 L 80 170 Z'),
    fitting('M 78 140 L 52 142 C 46 142 42 146 42 152 L 42 164 C 42 168 46 170 52 170 L 82 172 Z'),
    line('M 66 141 L 66 171 M 54 142 L 50 170', 'faint'),
    part('water intakes', 'M 112 168 L 126 168 L 124 174 L 112 174 Z', 118, 171),
    part('jet intake', 'M 132 178 C 140 168 150 166 164 166 L 218 176 L 218 180 L 134 182 Z', 186, 175),
    line(
      'M 150 168 L 150 181 M 164 168 L 164 181 M 178 170 L 178 181 M 192 173 L 192 180 M 206 175 L 206 180',
      'faint',
    ),
    line(oval(332, 70, 8, 3), 'faint'),
  ],
};
