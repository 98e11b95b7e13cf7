import { fenderLine, fenderShape } from './equipment.js';
import { outboardBracket, outboardFromSide } from './outboard.js';
import { disc } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

/** An open motorboat with an outboard, seen from starboard. */
export const openMotorboatSide: View = {
  name: 'side',
  width: 500,
  height: 232,
  marks: [
    line('M 268 100 L 268 84 M 262 84 L 276 80', 'faint'),
    fitting('M 150 104 L 150 80 Q 150 74 156 74 L 166 74 Q 171 74 172 80 L 176 104 Z'),
    fitting('M 206 104 L 206 80 Q 206 74 212 74 L 222 74 Q 227 74 228 80 L 232 104 Z'),
    fitting('M 268 100 L 290 62 L 304 60 L 336 97 Z'),
    line('M 304 60 L 312 98 M 278 83 L 322 81', 'faint'),
    line('M 352 95 L 366 76 L 448 66 L 468 74 M 392 90 L 402 72 M 430 83 L 438 67'),
    part(
      'trolling motor',
      'M 471 50 L 476 49 L 489 138 C 498 140 500 152 489 154 L 474 155 C 466 153 467 143 474 141 L 484 139 Z',
      480,
      112,
    ),
    line('M 462 58 C 466 48 480 44 488 47 M 466 142 L 462 134 M 466 154 L 462 162'),
    body('M 94 96 C 190 100 340 98 480 72 C 474 98 460 124 438 148 C 420 162 386 174 330 174 L 106 174 Z'),
    part('hull below waterline', 'M 101.9 148 L 438 148 C 420 162 386 174 330 174 L 106 174 Z', 352, 163),
    part('waterline', 'M 100.6 140 L 445 140 L 438 148 L 101.9 148 Z', 408, 144),
    part('seams and welds', 'M 103.4 157 C 220 158 350 158 424 152 L 419 157 C 350 162 220 162 104.2 161 Z', 250, 160),
    line('M 95 103 C 190 107 340 105 478 79'),
    line('M 98 124 C 200 126 350 124 464 104', 'faint'),
    line('M 452 100 L 456 98 L 455 104 Z', 'faint'),
    part('through-hull fittings', `${disc(140, 131, 4)} ${disc(156, 131, 4)}`, 156, 131),
    again('mooring lines', 'M 118 96 L 126 96 L 124 92 L 120 92 Z'),
    part('fenders', `${fenderShape(236, 112)} ${fenderShape(338, 109)}`, 342, 122),
    line(`${fenderLine(236, 112)} ${fenderLine(338, 109)}`),
    part('transducer', 'M 110 174 L 127 174 L 122 182 L 108 181 Z', 117, 178),
    part('speed indicator', 'M 134 174 L 138 174 L 136 189 L 131 189 Z', 134.5, 183),
    line('M 108 170 L 108 181 M 133 168 L 134 176', 'faint'),
    ...outboardBracket,
    again('transom', 'M 94 96 L 98 96.2 L 110 174 L 106 174 Z'),
    ...outboardFromSide,
    part('swim platform', 'M 58 118 L 101 118 L 102 126 L 58 126 Z', 68, 122),
  ],
};
