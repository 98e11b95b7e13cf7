import { anchorShape, fenderLine, fenderShape } from './equipment.js';
import { disc, oval } from './path.js';
import { sterndriveFromSide } from './sterndrive.js';
import { again, body, fitting, line, part, type View } from './view.js';

/** A sterndrive cruiser, seen from starboard. */
export const sterndriveCruiserSide: View = {
  name: 'side',
  width: 500,
  height: 236,
  marks: [
    line('M 150 22 L 150 4 M 150 22 L 150 14', 'detail'),
    fitting('M 118 94 L 138 28 L 262 28 C 276 28 286 32 296 40 L 344 76 L 330 94 Z'),
    fitting('M 150 36 L 196 36 L 196 66 L 142 66 Z'),
    fitting('M 204 36 L 258 36 C 268 36 276 40 284 46 L 308 66 L 204 66 Z'),
    line('M 126 28 L 270 28 M 120 22 L 262 22 C 278 22 290 28 300 36', 'detail'),
    line('M 244 36 L 258 66', 'faint'),
    body(
      'M 72 86 C 160 94 300 88 368 74 C 410 66 452 58 488 56 C 484 88 466 122 444 150 C 424 168 388 180 330 180 L 94 180 Z',
    ),
    part('hull below waterline', 'M 86.9 150 L 444 150 C 424 168 388 180 330 180 L 94 180 Z', 356, 166),
    part('waterline', 'M 84.9 141 L 450.5 141 L 444 150 L 86.9 150 Z', 416, 145.5),
    part('seams and welds', 'M 88.9 160 C 220 161 350 160 428 153 L 423 158 C 350 166 220 166 90.1 165 Z', 262, 163),
    line('M 73.5 94 C 160 102 300 96 370 82 C 412 74 452 66 487 64'),
    line('M 78 114 C 180 120 350 112 480 88', 'faint'),
    fitting(`${oval(318, 108, 15, 6)} ${oval(362, 102, 13, 5.5)} ${oval(402, 95, 11, 5)}`),
    line('M 352 76 L 364 58 L 452 44 L 486 48 L 488 56 M 392 69 L 402 52 M 430 61 L 438 46 M 466 57 L 470 46'),
    part('anchor', anchorShape(478, 62), 484, 66),
    line('M 484 70 L 500 70', 'faint'),
    part('fenders', `${fenderShape(204, 108)} ${fenderShape(282, 106)}`, 286, 124),
    line(`${fenderLine(204, 108)} ${fenderLine(282, 106)}`),
    part('through-hull fittings', `${disc(132, 132, 4)} ${disc(148, 132, 4)} ${disc(172, 131, 4)}`, 172, 131),
    again('transom', 'M 72 86 L 78 86.5 L 99.5 180 L 94 180 Z'),
    part('swim platform', 'M 18 108 L 78 108 L 80 117 L 18 117 Z', 26, 112),
    line('M 30 117 L 74 132', 'faint'),
    part('transducer', 'M 112 180 L 130 180 L 125 188 L 110 187 Z', 120, 184),
    part('speed indicator', 'M 138 180 L 142 180 L 140 196 L 135 196 Z', 138.5, 190),
    ...sterndriveFromSide,
    part('trim tabs and rams', 'M 94 176 L 68 184 L 68 188 L 95 181 Z', 84, 182),
  ],
};
