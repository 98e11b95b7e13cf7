import { bladesShape, hubShape } from './equipment.js';
import { bothSides, box, disc, oval } from './path.js';
import { again, fitting, line, part, type View } from './view.js';

const middle = 95;

/** A sterndrive on a transom that runs from 80 across and 122 down to 94 across and 180 down, seen from starboard. */
export const sterndriveFromSide: View['marks'] = [
  fitting('M 78 124 L 50 122 C 36 121 30 128 31 138 L 36 166 L 70 166 L 88 156 Z'),
  line('M 32 134 C 42 128 56 126 70 128', 'faint'),
  part('gimbal area', 'M 79 122 L 70 124 C 64 132 64 148 70 158 L 90 162 Z', 78, 134),
  line('M 73 125 C 69 134 69 148 74 159 M 77 124 C 74 134 74 150 80 160', 'faint'),
  part('hydraulic rams', 'M 90 160 L 62 150 L 60 154 L 88 166 Z M 62 150 L 44 143 L 42 148 L 60 154 Z', 52, 149),
  part('cavitation plate', 'M 10 166 L 76 166 L 80 171 L 13 171 Z', 66, 168.5),
  part('zincs', 'M 20 171 L 33 171 L 29 179 L 23 179 Z', 26, 175),
  part(
    'outdrive lower unit',
    'M 38 171 L 66 171 L 66 180 C 76 183 82 188 83 193 C 80 199 68 202 58 202 L 26 201 L 24 184 L 38 182 Z M 44 202 L 64 202 L 54 222 L 47 221 Z',
    73,
    192,
  ),
  part('water intakes', box(45, 177, 14, 4, 1), 52, 179),
  part(
    'propeller',
    'M 12 185 L 25 184 L 25 201 L 12 200 Z M 20 185 C 9 180 7 167 15 163 C 22 169 24 177 23 185 Z M 20 200 C 9 205 9 219 16 223 C 23 216 25 208 23 200 Z',
    15,
    215,
  ),
  part('exhaust hub', oval(11, 192.5, 4, 7.5), 9, 193),
];

/** A sterndrive in the middle of a transom, seen from astern. */
export const sterndriveFromAstern: View['marks'] = [
  again('gimbal area', 'M 70 94 L 120 94 L 124 126 L 112 134 L 78 134 L 66 126 Z'),
  fitting('M 80 90 L 110 90 L 113 104 L 108 146 L 82 146 L 77 104 Z'),
  again('hydraulic rams', bothSides('M 70 112 L 77 112 L 82 140 L 76 141 Z', middle)),
  again('zincs', disc(95, 118, 6)),
  line('M 91.5 114.5 L 98.5 121.5 M 98.5 114.5 L 91.5 121.5', 'faint'),
  again(
    'outdrive lower unit',
    'M 88 151 L 102 151 L 105 157 L 105 175 L 98 179 L 96.5 196 L 93.5 196 L 92 179 L 85 175 L 85 157 Z',
  ),
  again('cavitation plate', 'M 62 146 L 128 146 L 126 151 L 64 151 Z'),
  again('propeller', bladesShape(middle, 167, 25)),
  again('exhaust hub', hubShape(middle, 167, 7)),
];
