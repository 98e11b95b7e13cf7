/**
 * Degrees Fahrenheit that a hot spray loses for each foot between nozzle and part, least and most; common practice, no
 * source. Wind, nozzle and pressure move it further.
 */
export const lossPerFootF = [25, 30] as const;

/** How hot the water may have been where it touched, in degrees F, from the nozzle's temperature and its distance. */
export function contactEstimate(nozzleF: number, standOffFt: number): { readonly low: number; readonly high: number } {
  const [least, most] = lossPerFootF;
  return { low: nozzleF - most * standOffFt, high: nozzleF - least * standOffFt };
}
