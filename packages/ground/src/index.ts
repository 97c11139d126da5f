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
  type MonthSpan,
  monthInWords,
  monthNames,
  monthOfDay,
  monthOfHour,
  monthSpan,
  monthStartHour,
} from './calendar.js';
export { InputFileError, readInputText } from './input-file.js';
export { mustBeAbove, mustBeShare, mustBeWhole, mustHold, mustLie, OutOfRangeError } from './range.js';
