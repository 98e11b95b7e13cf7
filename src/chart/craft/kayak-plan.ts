import { aboveAndBelow, disc, oval } from './path.js';
import { again, body, fitting, line, type View } from './view.js';

const middle = 24;

/** A kayak seen from above, its paddle beside it. */
export const kayakPlan: View = {
  name: 'kayak, from above',
  width: 296,
  height: 66,
  marks: [
    body('M 2 24 C 44 10 96 3 144 3 C 196 3 250 14 294 24 C 250 34 196 45 144 45 C 96 45 44 38 2 24 Z'),
    line(aboveAndBelow('M 14 23.5 C 54 12 100 7 144 7 C 192 7 240 15 280 23.5', middle), 'faint'),
    fitting('M 104 24 C 104 12 116 10 132 10 C 156 10 178 16 184 24 C 178 32 156 38 132 38 C 116 38 104 36 104 24 Z'),
    line('M 109 24 C 109 15 118 13 132 13 C 152 13 170 18 177 24 C 170 30 152 35 132 35 C 118 35 109 33 109 24 Z'),
    fitting('M 114 16 L 130 18 C 134 20 134 28 130 30 L 114 32 C 111 30 111 18 114 16 Z'),
    fitting(`${oval(66, 24, 14, 10)} ${disc(222, 24, 8)}`),
    line(`${oval(66, 24, 10, 7)} ${disc(222, 24, 5.5)}`, 'faint'),
    line('M 192 14 L 208 34 M 208 14.5 L 192 34 M 236 18 L 250 29 M 250 18.5 L 236 29.5 M 34 18 L 46 31', 'faint'),
    again(
      'gear',
      'M 26 58 C 28 52 50 52 58 56 L 238 56 C 246 52 268 52 270 58 C 268 64 246 64 238 59.5 L 58 59.5 C 50 64 28 64 26 58 Z',
    ),
    line('M 34 58 L 56 58 M 240 58 L 262 58 M 144 56 L 144 59.5 M 152 56 L 152 59.5', 'faint'),
  ],
};
