import { anchorShape, fenderLine, fenderShape } from './equipment.js';
import { disc, oval } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

/** A sailboat with an inboard engine, seen from starboard; the mast is broken off to save height. */
export const sailboatSide: View = {
  name: 'side',
  width: 500,
  height: 262,
  marks: [
    line('M 268 86 L 268 12 M 274 86 L 274 8 M 262 14 L 272 8 M 270 14 L 280 8', 'detail'),
    line('M 276 20 L 484 88 M 266 20 L 60 92', 'faint'),
    fitting('M 120 66 C 160 56 224 56 262 66 L 262 74 C 224 70 160 70 120 75 Z'),
    line('M 120 70 L 266 70 M 150 58 L 148 74 M 196 56 L 194 72 M 236 60 L 234 74', 'faint'),
    fitting('M 184 96 L 194 82 L 318 80 C 332 80 342 86 350 96 Z'),
    fitting(`${oval(222, 89, 12, 4)} ${oval(262, 88, 12, 4)} ${oval(302, 88, 12, 4)}`),
    line(
      'M 74 98 L 74 74 L 110 78 M 92 98 L 92 76 M 396 92 L 400 68 L 486 62 L 486 86 M 444 88 L 446 65 M 340 94 L 340 72 L 400 68',
      'faint',
    ),
    line('M 112 90 L 142 78', 'detail'),
    part('centreboard', 'M 244 182 L 296 182 L 270 252 L 240 248 Z', 262, 232),
    line('M 250 188 L 286 188', 'faint'),
    part('rudder', 'M 76 132 L 88 132 L 100 160 L 98 226 C 88 232 74 228 72 216 Z', 84, 208),
    line('M 76 146 L 94 146 M 75 170 L 99 170', 'faint'),
    part('prop shafts', 'M 136 181 L 176 172 L 178 177 L 138 187 Z', 156, 179.5),
    part(
      'propeller',
      'M 124 182 L 138 180 L 138 189 L 124 188 Z M 130 182 C 121 177 121 164 128 161 C 135 166 136 174 135 182 Z M 130 188 C 121 193 121 206 128 209 C 135 204 136 196 135 188 Z',
      127,
      201,
    ),
    fitting('M 166 172 L 176 172 L 172 188 L 168 188 Z'),
    body(
      'M 56 98 C 180 106 350 104 492 84 C 484 108 466 132 440 150 C 400 176 340 188 270 188 C 200 188 130 178 84 150 Z',
    ),
    part('hull below waterline', 'M 84 150 L 440 150 C 400 176 340 188 270 188 C 200 188 130 178 84 150 Z', 372, 162),
    part('waterline', 'M 79.7 142 L 450.5 142 L 440 150 L 84 150 Z', 424, 146),
    part('seams and welds', 'M 60 103 C 180 112 350 110 489 89 L 486 94 C 350 116 180 118 62.5 108 Z', 330, 109),
    line('M 70 124 C 180 132 340 130 470 112', 'faint'),
    again('centreboard', 'M 230 184 L 310 184 L 308 194 L 232 194 Z'),
    part('through-hull fittings', `${disc(120, 130, 4)} ${disc(136, 132, 4)}`, 136, 132),
    part('water intakes', `${disc(206, 176, 4)}`, 206, 176),
    part('zincs', oval(188, 164, 7, 4), 188, 164),
    part('fenders', `${fenderShape(226, 116)} ${fenderShape(312, 115)}`, 316, 132),
    line(`${fenderLine(226, 116)} ${fenderLine(312, 115)}`),
    part('anchor', anchorShape(476, 88), 482, 94),
    again('transom', 'M 56 98 L 62 98.5 L 90 153 L 84 150 Z'),
    fitting('M 66 122 L 78 122 L 84 140 L 74 140 Z'),
  ],
};
