import type { WashStandard } from './wash-standard.js';

/** Larvae in live wells, bait wells, ballast and bilges. */
export const westernInside: WashStandard = {
  name: 'western inside 2016',
  source:
    'Elwell and Phillips (eds) 2016, Uniform Minimum Protocols and Standards for Watercraft Inspection and Decontamination, third edition, table 3, as reproduced in a boat maker’s manual of 2021',
  tag: 'second-hand',
  contactTemperatureF: 120,
  contactSeconds: 130,
  flushMinutes: null,
  flushExitTemperatureF: null,
};
