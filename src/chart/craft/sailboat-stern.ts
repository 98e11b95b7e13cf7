import { bladesShape } from './equipment.js';
import { disc } from './path.js';
import { again, body, fitting, line, part, type View } from './view.js';

/** A sailboat with an inboard engine, seen from astern. */
export const sailboatStern: View = {
  name: 'stern',
  width: 190,
  height: 210,
  marks: [
    line('M 92 60 L 92 6 M 98 60 L 98 2 M 88 8 L 96 2 M 94 8 L 102 2', 'detail'),
    line('M 30 72 L 30 44 L 70 40 M 160 72 L 160 44 L 120 40', 'faint'),
    fitting('M 46 70 L 54 56 L 136 56 L 144 70 Z'),
    again('centreboard', 'M 92 150 L 98 150 L 97 206 L 93 206 Z'),
    again('propeller', bladesShape(95, 156, 17)),
    body(
      'M 12 70 C 60 76 130 76 178 70 C 176 96 164 120 142 136 C 124 148 108 156 95 156 C 82 156 66 148 48 136 C 26 120 14 96 12 70 Z',
    ),
    part(
      'transom',
      'M 28 78 C 70 82 120 82 162 78 C 158 94 148 106 132 114 C 118 120 106 122 95 122 C 84 122 72 120 58 114 C 42 106 32 94 28 78 Z',
      48,
      90,
    ),
    again('hull below waterline', 'M 48 136 C 66 148 82 156 95 156 C 108 156 124 148 142 136 L 148 131 L 42 131 Z'),
    again('waterline', 'M 42 131 L 148 131 L 154.5 125 L 35.5 125 Z'),
    again('through-hull fittings', `${disc(68, 104, 3.5)} ${disc(122, 104, 3.5)}`),
    again('mooring lines', 'M 34 70 L 46 70 L 44 65 L 36 65 Z M 144 70 L 156 70 L 154 65 L 146 65 Z'),
    fitting('M 88 84 L 102 84 L 101 100 L 89 100 Z'),
    again('rudder', 'M 91 80 L 99 80 L 99 186 C 97 190 93 190 91 186 Z'),
    line('M 91 100 L 99 100 M 91 122 L 99 122', 'faint'),
  ],
};
