import { cutOff } from '../truth.js';

/** Days since 1970-01-01; all clock times here are a station's own, and never touch the machine's time zone. */
export function dayNumber(year: number, month: number, day: number): number {
  return Math.round(Date.UTC(year, month - 1, day) / 86_400_000);
}

export interface CalendarDay {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
  /** 0 for Monday to 6 for Sunday. */
  readonly weekday: number;
}

/** The calendar day of a day number. */
export function calendarDay(number: number): CalendarDay {
  const date = new Date(number * 86_400_000);
  return {
    year: date.getUTCFullYear(),
    month: date.getUTCMonth() + 1,
    day: date.getUTCDate(),
    weekday: (date.getUTCDay() + 6) % 7,
  };
}

/** The day number of the n-th given weekday of a month; counted from the end for n = -1. */
export function nthWeekday(year: number, month: number, weekday: number, n: number): number {
  if (n < 0) {
    const last = dayNumber(year, month + 1, 1) - 1;
    return last - ((calendarDay(last).weekday - weekday + 7) % 7);
  }
  const first = dayNumber(year, month, 1);
  return first + ((weekday - calendarDay(first).weekday + 7) % 7) + 7 * (n - 1);
}

/** Whether a day belongs to one of the three long weekends of summer. */
export function isHoliday(number: number): boolean {
  const { year } = calendarDay(number);
  const mondays = [nthWeekday(year, 5, 0, -1), nthWeekday(year, 9, 0, 1)];
  const july = dayNumber(year, 7, 4);
  return mondays.some((monday) => number >= monday - 2 && number <= monday) || Math.abs(number - july) <= 1;
}

/** The days on which clocks leap from 02:00 to 03:00 and fall back from 02:00 to 01:00, in both zones of the basin. */
export function clockChanges(year: number): { readonly leap: number; readonly back: number } {
  return { leap: nthWeekday(year, 3, 6, 2), back: nthWeekday(year, 11, 6, 1) };
}

/** A moment by a station's own clock: its day number × 1,440 + the minute of the day. */
export type Moment = number;

function summerTime(moment: Moment): boolean {
  const { leap, back } = clockChanges(calendarDay(Math.floor(moment / 1440)).year);
  return moment >= leap * 1440 + 120 && moment < back * 1440 + 120;
}

/** Minutes truly elapsed between two moments of one station, whatever its clocks did in between. */
export function elapsedMinutes(from: Moment, to: Moment): number {
  return to - from + 60 * (Number(summerTime(from)) - Number(summerTime(to)));
}

/** The moment itself, or 03:00 where it falls in the hours in which clocks are changed. */
export function clearOfClockChange(moment: Moment): Moment {
  const day = Math.floor(moment / 1440);
  const minute = moment - day * 1440;
  if (minute < 60 || minute >= 180) return moment;
  const { leap, back } = clockChanges(calendarDay(day).year);
  return day === leap || day === back ? day * 1440 + 180 : moment;
}

/** The data's cut-off by the clock of a zone. */
export function cutOffMoment(zone: keyof typeof cutOff): Moment {
  const { year, month, day, minute } = cutOff[zone];
  return dayNumber(year, month, day) * 1440 + minute;
}

const two = (value: number): string => (value < 10 ? `0${value}` : String(value));
const dayTexts = new Map<number, { readonly american: string; readonly dotted: string }>();

function dayText(number: number): { readonly american: string; readonly dotted: string } {
  let texts = dayTexts.get(number);
  if (texts === undefined) {
    const { year, month, day } = calendarDay(number);
    texts = { american: `${two(month)}/${two(day)}/${year}`, dotted: `${two(day)}.${two(month)}.${year}` };
    dayTexts.set(number, texts);
  }
  return texts;
}

/** MM/dd/yyyy. */
export const americanDate = (number: number): string => dayText(number).american;
/** dd.MM.yyyy. */
export const dottedDate = (number: number): string => dayText(number).dotted;

/** hh:mm AM or PM. */
export function twelveHourClock(minute: number): string {
  const hour = Math.floor(minute / 60);
  return `${two(hour % 12 === 0 ? 12 : hour % 12)}:${two(minute % 60)} ${hour < 12 ? 'AM' : 'PM'}`;
}

/** HH:mm. */
export const dayClock = (minute: number): string => `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
/** MM/dd/yyyy hh:mm a. */
export const americanMoment = (moment: Moment): string =>
  `${americanDate(Math.floor(moment / 1440))} ${twelveHourClock(moment % 1440)}`;
/** dd.MM.yyyy HH:mm. */
export const dottedMoment = (moment: Moment): string =>
  `${dottedDate(Math.floor(moment / 1440))} ${dayClock(moment % 1440)}`;
