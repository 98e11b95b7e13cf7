import { fenderLine, fenderShape } from './equipment.js';
import { oval } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

/** A sailing dinghy without an engine, seen from starboard; the mast is broken off to save height. */
export const sailingDinghySide: View = {
  name: 'side',
  width: 500,
  height: 262,
  marks: [
    line('M 307 92 L 307 12 M 313 92 L 313 8 M 301 14 L 311 8 M 309 14 L 319 8', 'detail'),
    line('M 314 20 L 485 80 M 309 18 L 288 98 M 132 57 L 112 92 M 142 57 L 112 92', 'faint'),
    fitting('M 114 54 C 150 38 254 34 306 44 L 306 53 C 254 49 150 52 114 62 Z'),
    line('M 108 61 L 307 56 M 148 46 L 150 57 M 196 41 L 197 53 M 246 39.5 L 246 51', 'faint'),
    line('M 106 62 L 307 57'),
    fitting('M 112 104 L 118 93 L 330 89 C 344 89 352 93 360 97 Z'),
    line('M 118 97 L 342 93', 'faint'),
    fitting('M 54 92 L 66 88 L 136 82 L 136 86 L 68 94 Z'),
    part('rudder', 'M 50 94 L 64 94 L 68 108 L 82 152 L 84 216 C 76 226 62 224 58 214 L 52 130 Z', 68, 204),
    line('M 53 136 L 76 136 M 55 162 L 82 162', 'faint'),
    part('centreboard', 'M 264 178 L 322 176 L 294 246 C 286 254 264 252 258 244 Z', 276, 234),
    line('M 268 190 L 310 188', 'faint'),
    body(
      'M 66 98 C 170 108 330 104 488 78 C 482 104 462 134 436 152 C 400 172 340 180 270 180 C 200 180 136 172 84 156 Z',
    ),
    part(
      'hull below waterline',
      'M 440.1 149 C 438.8 150 437.4 151 436 152 C 400 172 340 180 270 180 C 200 180 136 172 84 156 L 81.8 149 Z',
      384,
      161,
    ),
    part('waterline', 'M 449.6 141 C 446.6 143.8 443.4 146.5 440.1 149 L 81.8 149 L 79.3 141 Z', 428, 145),
    part(
      'seams and welds',
      'M 69 107 C 172 117 330 113 484.5 88 L 482.8 93 C 330 118 172 122 70.6 112.5 Z',
      398,
      106.5,
    ),
    line('M 67.5 102.5 C 170 112.5 330 108.5 486.5 83', 'detail'),
    line('M 74 124 C 180 134 340 130 472 112', 'faint'),
    again('centreboard', 'M 246 179 L 336 176 L 334 184 L 248 187 Z'),
    part('zincs', oval(214, 168, 7, 4), 214, 168),
    part('fenders', `${fenderShape(176, 118)} ${fenderShape(318, 115)}`, 322, 128),
    line(`${fenderLine(176, 118)} ${fenderLine(318, 115)}`),
    again('transom', 'M 66 98 L 72 98.6 L 90 157.6 L 84 156 Z'),
    fitting('M 62 112 L 72 112 L 73.5 117 L 64 117 Z M 74 142 L 81 142 L 82.5 147 L 76 147 Z'),
    line('M 474 84 L 480 82 L 478 88 Z', 'faint'),
  ],
};
