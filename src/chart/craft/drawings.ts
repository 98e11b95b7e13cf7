import { canoePlan } from './canoe-plan.js';
import { canoeSide } from './canoe-side.js';
import { canoeStern } from './canoe-stern.js';
import { type CraftDrawing, stand } from './craft-drawing.js';
import { houseboatPlan } from './houseboat-plan.js';
import { houseboatSide } from './houseboat-side.js';
import { houseboatStern } from './houseboat-stern.js';
import { kayakPlan } from './kayak-plan.js';
import { kayakSide } from './kayak-side.js';
import { openMotorboatPlan } from './open-motorboat-plan.js';
import { openMotorboatSide } from './open-motorboat-side.js';
import { openMotorboatStern } from './open-motorboat-stern.js';
import { personalWatercraftPlan } from './personal-watercraft-plan.js';
import { personalWatercraftSide } from './personal-watercraft-side.js';
import { personalWatercraftStern } from './personal-watercraft-stern.js';
import { pontoonBoatPlan } from './pontoon-boat-plan.js';
import { pontoonBoatSide } from './pontoon-boat-side.js';
import { pontoonBoatStern } from './pontoon-boat-stern.js';
import { rowboatPlan } from './rowboat-plan.js';
import { rowboatSide } from './rowboat-side.js';
import { rowboatStern } from './rowboat-stern.js';
import { sailboatPlan } from './sailboat-plan.js';
import { sailboatSide } from './sailboat-side.js';
import { sailboatStern } from './sailboat-stern.js';
import { sailingDinghyPlan } from './sailing-dinghy-plan.js';
import { sailingDinghySide } from './sailing-dinghy-side.js';
import { sailingDinghyStern } from './sailing-dinghy-stern.js';
import { sterndriveCruiserPlan } from './sterndrive-cruiser-plan.js';
import { sterndriveCruiserSide } from './sterndrive-cruiser-side.js';
import { sterndriveCruiserStern } from './sterndrive-cruiser-stern.js';
import { trailerSide } from './trailer-side.js';
import { trailerStern } from './trailer-stern.js';
import type { View } from './view.js';

const width = 500;
const belowSide = 22;
const trailerScale = 0.58;

/** A craft with its side view above, its stern and its inside below, and its trailer at the foot. */
function onTrailer(
  named: Pick<CraftDrawing, 'name' | 'title' | 'watercraftType' | 'drive'>,
  side: View,
  stern: View,
  plan: View,
): CraftDrawing {
  const below = side.height + belowSide;
  const trailerTop = below + plan.height + 22;
  const right = width - plan.width;
  return {
    ...named,
    width,
    height: Math.max(below + stern.height, trailerTop + trailerSide.height * trailerScale) + 16,
    views: [
      stand(side, 0, 0),
      stand(stern, 0, below),
      stand(plan, right, below),
      stand(trailerSide, right, trailerTop, trailerScale),
    ],
  };
}

/** Every craft that is drawn, each as one recorded build: with its engine, since parts hang on it. */
export const drawings: readonly CraftDrawing[] = [
  onTrailer(
    {
      name: 'open-motorboat',
      title: 'Open motorboat with outboard',
      watercraftType: 'open motorboat',
      drive: 'outboard',
    },
    openMotorboatSide,
    openMotorboatStern,
    openMotorboatPlan,
  ),
  onTrailer(
    {
      name: 'sterndrive-cruiser',
      title: 'Sterndrive cruiser',
      watercraftType: 'cabin motorboat',
      drive: 'sterndrive',
    },
    sterndriveCruiserSide,
    sterndriveCruiserStern,
    sterndriveCruiserPlan,
  ),
  onTrailer(
    {
      name: 'pontoon-boat',
      title: 'Pontoon boat with outboard',
      watercraftType: 'pontoon boat',
      drive: 'outboard',
    },
    pontoonBoatSide,
    pontoonBoatStern,
    pontoonBoatPlan,
  ),
  onTrailer(
    {
      name: 'personal-watercraft',
      title: 'Personal watercraft',
      watercraftType: 'personal watercraft',
      drive: null,
    },
    personalWatercraftSide,
    personalWatercraftStern,
    personalWatercraftPlan,
  ),
  onTrailer(
    {
      name: 'sailboat',
      title: 'Sailboat with inboard engine',
      watercraftType: 'auxiliary sail',
      drive: 'inboard',
    },
    sailboatSide,
    sailboatStern,
    sailboatPlan,
  ),
  onTrailer(
    { name: 'sailing-dinghy', title: 'Sailing dinghy', watercraftType: 'sail only', drive: null },
    sailingDinghySide,
    sailingDinghyStern,
    sailingDinghyPlan,
  ),
  onTrailer(
    { name: 'houseboat', title: 'Houseboat with sterndrive', watercraftType: 'houseboat', drive: 'sterndrive' },
    houseboatSide,
    houseboatStern,
    houseboatPlan,
  ),
  onTrailer(
    { name: 'rowboat', title: 'Rowboat', watercraftType: 'rowboat', drive: null },
    rowboatSide,
    rowboatStern,
    rowboatPlan,
  ),
  {
    name: 'paddlecraft',
    title: 'Canoe and kayak',
    watercraftType: 'paddlecraft',
    drive: null,
    width,
    height: 412,
    views: [
      stand(canoeSide, 0, 0),
      stand(kayakSide, 0, 122),
      stand(canoeStern, 0, 240),
      stand(canoePlan, 204, 224),
      stand(kayakPlan, 204, 322),
    ],
  },
  {
    name: 'trailer',
    title: 'Trailer',
    watercraftType: null,
    drive: null,
    width,
    height: trailerSide.height + trailerStern.height + 50,
    views: [stand(trailerSide, 0, 0), stand(trailerStern, 140, trailerSide.height + 26)],
  },
];

/** The drawing of that name, or null. */
export function drawingOf(name: string): CraftDrawing | null {
  return drawings.find((drawing) => drawing.name === name) ?? null;
}
