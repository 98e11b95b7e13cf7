import { fenderLine, fenderShape } from './equipment.js';
import { box, disc, oval } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

/** A pontoon boat with an outboard, seen from starboard. */
export const pontoonBoatSide: View = {
  name: 'side',
  width: 500,
  height: 236,
  marks: [
    line('M 150 74 L 128 26 M 252 74 L 262 24 M 152 74 L 258 28 M 250 74 L 132 30', 'faint'),
    fitting('M 112 26 C 176 12 226 12 284 22 L 284 30 C 226 20 176 20 112 34 Z'),
    fitting('M 84 118 L 84 74 L 476 74 L 476 118 Z'),
    fitting(
      `${box(90, 80, 84, 32, 3)} ${box(216, 80, 78, 32, 3)} ${box(300, 80, 82, 32, 3)} ${box(388, 80, 82, 32, 3)}`,
    ),
    line(
      'M 90 92 L 174 92 M 216 92 L 294 92 M 300 92 L 382 92 M 388 92 L 470 92 M 180 74 L 180 118 M 210 74 L 210 118',
    ),
    fitting('M 78 118 L 482 118 L 482 128 L 78 128 Z'),
    line(
      'M 120 128 L 112 140 M 128 128 L 136 140 M 214 128 L 206 140 M 222 128 L 230 140 M 308 128 L 300 140 M 316 128 L 324 140 M 402 128 L 394 140 M 410 128 L 418 140',
    ),
    body('M 70 138 L 440 138 C 466 138 484 144 494 150 C 482 172 458 184 426 184 L 70 184 Z'),
    part('hull below waterline', 'M 70 166 L 481 166 C 468 178 450 184 426 184 L 70 184 Z', 372, 175),
    part('waterline', 'M 70 158 L 488 158 L 481 166 L 70 166 Z', 440, 162),
    part('seams and welds', `${box(168, 138, 5, 20)} ${box(268, 138, 5, 20)} ${box(368, 138, 5, 20)}`, 270.5, 148),
    line('M 170.5 166 L 170.5 184 M 270.5 166 L 270.5 184 M 370.5 166 L 370.5 184', 'faint'),
    line('M 70 144 L 452 144', 'faint'),
    part('fenders', `${fenderShape(196, 128)} ${fenderShape(344, 128)}`, 348, 146),
    line(`${fenderLine(196, 128)} ${fenderLine(344, 128)}`),
    part(
      'trolling motor',
      'M 474 62 L 479 61 L 489 126 C 499 128 501 139 490 141 L 474 142 C 465 140 466 131 474 129 L 484 127 Z',
      482,
      110,
    ),
    line('M 466 66 C 470 57 482 54 490 57 M 466 130 L 461 123 M 466 141 L 461 148'),
    again('transom', 'M 70 128 L 76 128 L 80 162 L 74 162 Z'),
    part('through-hull fittings', `${disc(100, 150, 4)}`, 100, 150),
    part('transducer', 'M 78 184 L 94 184 L 90 192 L 76 191 Z', 86, 188),
    fitting('M 60 96 L 76 100 L 80 130 L 68 134 L 62 122 Z'),
    fitting('M 34 94 L 66 94 L 62 126 L 60 174 L 36 174 L 38 146 Z'),
    line('M 44 98 L 42 170', 'faint'),
    body('M 18 70 C 15 56 24 50 36 50 L 56 51 C 68 52 73 60 72 71 L 70 94 L 24 94 Z'),
    part('cooling system', 'M 27 76 L 64 76 L 62 88 L 30 88 Z', 40, 82),
    line('M 19 70 L 72 71'),
    part('swim platform', 'M 40 118 L 84 118 L 84 126 L 40 126 Z', 46, 122),
    line('M 44 126 L 44 150 M 52 126 L 52 150 M 44 136 L 52 136 M 44 145 L 52 145'),
    part('cavitation plate', 'M 10 174 L 70 174 L 73 179 L 13 179 Z', 63, 176.5),
    part('zincs', 'M 20 179 L 32 179 L 28 187 L 23 187 Z', 26, 183),
    part(
      'outboard lower unit',
      'M 38 179 L 62 179 L 62 187 C 71 190 77 195 78 200 C 75 206 64 209 54 209 L 26 208 L 24 191 L 38 189 Z M 42 209 L 60 209 L 50 228 L 44 227 Z',
      68,
      199,
    ),
    part('water intakes', box(45, 184, 13, 4, 1), 52, 186),
    part(
      'propeller',
      'M 12 192 L 25 191 L 25 208 L 12 207 Z M 20 192 C 9 187 7 174 15 170 C 22 176 24 184 23 192 Z M 20 207 C 9 212 9 226 16 230 C 23 223 25 215 23 207 Z',
      15,
      222,
    ),
    part('exhaust hub', oval(11, 199.5, 4, 7.5), 9, 200),
  ],
};
