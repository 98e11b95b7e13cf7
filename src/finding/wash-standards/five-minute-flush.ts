import type { WashStandard } from './wash-standard.js';

/** An engine flushed for five minutes. */
export const fiveMinuteFlush: WashStandard = {
  name: 'five minute flush',
  source: 'common practice, no source',
  tag: 'common practice, no source',
  contactTemperatureF: null,
  contactSeconds: null,
  flushMinutes: 5,
  flushExitTemperatureF: null,
};
