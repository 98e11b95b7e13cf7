import { carriedMark } from './carried-mark.js';
import { fenderLine, fenderShape } from './equipment.js';
import { outboardBracket, outboardFromSide } from './outboard.js';
import { again, body, fitting, line, part, type View } from './view.js';

const type = 'inflatable boat';

/** An inflatable boat with a stiff floor and an outboard, seen from starboard. */
export const inflatableBoatSide: View = {
  name: 'side',
  width: 500,
  height: 232,
  marks: [
    fitting('M 244 94 L 250 58 L 286 58 C 292 58 294 62 296 68 L 302 92 Z'),
    line('M 252 58 L 264 40 L 282 44 L 288 58 M 258 70 L 290 70', 'detail'),
    line('M 246 66 L 236 60 M 232 68 L 240 54', 'detail'),
    fitting('M 172 94 L 174 74 Q 175 68 182 68 L 218 68 Q 225 68 226 74 L 228 94 Z'),
    line('M 174 80 L 226 80', 'faint'),
    part(
      'trolling motor',
      'M 471 50 L 476 49 L 489 138 C 498 140 500 152 489 154 L 474 155 C 466 153 467 143 474 141 L 484 139 Z',
      484,
      120,
    ),
    line('M 462 58 C 466 48 480 44 488 47 M 466 142 L 462 134 M 466 154 L 462 162'),
    body(
      'M 100 126 L 404 130 C 420 128 432 124 442 118 C 436 142 420 160 392 168 C 372 173 350 174 320 174 L 106 174 Z',
    ),
    part(
      'hull below waterline',
      'M 424.3 150 C 416.1 158 405.4 164.2 392 168 C 372 173 350 174 320 174 L 106 174 L 103 150 Z',
      352,
      162,
    ),
    part('waterline', 'M 431.1 142 C 429.1 144.8 426.8 147.5 424.3 150 L 103 150 L 102 142 Z', 396, 146),
    line('M 104 160 C 200 162 340 162 404 156', 'faint'),
    ...outboardBracket,
    again('transom', 'M 94 96 L 98 96.2 L 110 174 L 106 174 Z'),
    ...outboardFromSide.map((mark) => carriedMark(mark, type)),
    body(
      'M 66 113 C 74 99 90 95 108 95 L 330 93 C 398 90 440 78 468 60 C 482 54 492 62 488 74 C 472 104 436 128 382 133 L 108 135 C 90 133 76 126 66 113 Z',
    ),
    line('M 70 112 C 110 115 330 114 384 112 C 436 106 470 88 488 66'),
    line('M 72 117 C 110 120 330 119 384 117 C 438 111 472 94 488 74'),
    part(
      'seams and welds',
      'M 148 94.7 L 153 94.6 L 153 134.6 L 148 134.7 Z M 268 93.6 L 273 93.5 L 273 133.9 L 268 133.9 Z M 376 88.8 L 381 88.2 L 382 133 L 377 133.2 Z',
      379,
      102,
    ),
    line('M 108 95 C 103 108 103 122 108 135', 'detail'),
    line('M 168 100 Q 188 112 208 100 Q 228 112 248 100 M 290 100 Q 310 112 330 99 Q 346 108 362 97', 'faint'),
    part('fenders', `${fenderShape(196, 114)} ${fenderShape(316, 113)}`, 320, 126),
    line(`${fenderLine(196, 114)} ${fenderLine(316, 113)}`),
  ],
};
