import { besideBallast } from './beside-ballast.js';
import { besideInboard } from './beside-inboard.js';
import { besideJet } from './beside-jet.js';
import { besideOutboard } from './beside-outboard.js';
import { besideSterndrive } from './beside-sterndrive.js';
import { canoePlan } from './canoe-plan.js';
import { canoeSide } from './canoe-side.js';
import { canoeStern } from './canoe-stern.js';
import { type CraftDrawing, stand } from './craft-drawing.js';
import { houseboatPlan } from './houseboat-plan.js';
import { houseboatSide } from './houseboat-side.js';
import { houseboatStern } from './houseboat-stern.js';
import { inflatableBoatPlan } from './inflatable-boat-plan.js';
import { inflatableBoatSide } from './inflatable-boat-side.js';
import { inflatableBoatStern } from './inflatable-boat-stern.js';
import { kayakPlan } from './kayak-plan.js';
import { kayakSide } from './kayak-side.js';
import { craftWidth, onTrailer } from './on-trailer.js';
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

/** Every craft that is drawn, each as one recorded build: with its engine, since parts hang on it. */
export const drawings: readonly CraftDrawing[] = [
  onTrailer(
    {
      name: 'open-motorboat',
      title: 'Open motorboat with outboard',
      watercraftType: 'open motorboat',
      drive: 'outboard',
    },
    [openMotorboatSide, openMotorboatStern, openMotorboatPlan],
    [besideSterndrive, besideInboard, besideJet, besideBallast],
  ),
  onTrailer(
    { name: 'sterndrive-cruiser', title: 'Sterndrive cruiser', watercraftType: 'cabin motorboat', drive: 'sterndrive' },
    [sterndriveCruiserSide, sterndriveCruiserStern, sterndriveCruiserPlan],
    [besideOutboard, besideInboard, besideJet],
  ),
  onTrailer(
    { name: 'pontoon-boat', title: 'Pontoon boat with outboard', watercraftType: 'pontoon boat', drive: 'outboard' },
    [pontoonBoatSide, pontoonBoatStern, pontoonBoatPlan],
    [besideSterndrive, besideInboard],
  ),
  onTrailer(
    { name: 'houseboat', title: 'Houseboat with sterndrive', watercraftType: 'houseboat', drive: 'sterndrive' },
    [houseboatSide, houseboatStern, houseboatPlan],
    [besideOutboard, besideInboard],
  ),
  onTrailer(
    {
      name: 'inflatable-boat',
      title: 'Inflatable boat with outboard',
      watercraftType: 'inflatable boat',
      drive: 'outboard',
    },
    [inflatableBoatSide, inflatableBoatStern, inflatableBoatPlan],
    [],
  ),
  onTrailer(
    { name: 'personal-watercraft', title: 'Personal watercraft', watercraftType: 'personal watercraft', drive: null },
    [personalWatercraftSide, personalWatercraftStern, personalWatercraftPlan],
  ),
  onTrailer(
    { name: 'sailboat', title: 'Sailboat with inboard engine', watercraftType: 'auxiliary sail', drive: 'inboard' },
    [sailboatSide, sailboatStern, sailboatPlan],
    [besideOutboard],
  ),
  onTrailer({ name: 'sailing-dinghy', title: 'Sailing dinghy', watercraftType: 'sail only', drive: null }, [
    sailingDinghySide,
    sailingDinghyStern,
    sailingDinghyPlan,
  ]),
  onTrailer({ name: 'rowboat', title: 'Rowboat', watercraftType: 'rowboat', drive: null }, [
    rowboatSide,
    rowboatStern,
    rowboatPlan,
  ]),
  {
    name: 'paddlecraft',
    title: 'Canoe and kayak',
    watercraftType: 'paddlecraft',
    drive: null,
    width: craftWidth,
    height: 412,
    views: [
      stand(canoeSide, 0, 0),
      stand(kayakSide, 0, 122),
      stand(canoeStern, 0, 240),
      stand(canoePlan, 204, 224),
      stand(kayakPlan, 204, 322),
    ],
    anyDrive: null,
  },
  {
    name: 'trailer',
    title: 'Trailer',
    watercraftType: null,
    drive: null,
    width: craftWidth,
    height: trailerSide.height + trailerStern.height + 50,
    views: [stand(trailerSide, 0, 0), stand(trailerStern, 140, trailerSide.height + 26)],
    anyDrive: null,
  },
];

/** The drawing of that name, or null. */
export function drawingOf(name: string): CraftDrawing | null {
  return drawings.find((drawing) => drawing.name === name) ?? null;
}
