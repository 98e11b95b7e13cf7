import { placed } from './path.js';
import { body, fitting, line, part, type View } from './view.js';

const propeller =
  'M 124 182 L 138 180 L 138 189 L 124 188 Z M 130 182 C 121 177 121 164 128 161 C 135 166 136 174 135 182 Z M 130 188 C 121 193 121 206 128 209 C 135 204 136 196 135 188 Z';

/** The shaft, propeller and rudder of an inboard engine under the end of a hull, as some craft of a type have them. */
export const besideInboard: View = {
  name: 'with inboard',
  width: 132,
  height: 120,
  marks: [
    part('rudder', 'M 14 52 L 28 50 L 30 108 C 26 114 18 114 14 108 Z', 21, 100),
    line('M 15 66 L 28.5 65 M 15 84 L 29 83', 'faint'),
    part('prop shafts', 'M 112 44 L 116 49 L 54 84 L 51 79 Z', 84, 63.5),
    fitting('M 70 46 L 78 45 L 72 77 L 66 79 Z'),
    part('propeller', placed(propeller, -60, -75, 0.84), 46, 92),
    body('M 128 14 L 8 14 L 16 54 C 56 52 96 47 128 40'),
    line('M 9.5 22 L 128 22', 'faint'),
  ],
};
