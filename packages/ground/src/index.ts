export { angleApartDeg, clockwiseDeg, radiansPerDegree } from './angles.js';
export {
  dateInWords,
  dateOfDay,
  dayIsWithin,
  dayOfDate,
  daysInMonth,
  daysPerYear,
  type HourOfYear,
  hourOfYear,
  hoursPerYear,
  hourText,
  monthInWords,
  monthNames,
  monthOfDay,
  monthOfHour,
  monthStartHour,
} from './calendar.js';
export { mustBeAbove, mustBeShare, mustBeWhole, mustHold, mustLie, OutOfRangeError } from './range.js';
