/** Degrees Celsius from a reading on the scale a unit names; `null` when the unit names no temperature scale. */
export function toCelsius(reading: number, unit: string): number | null {
  switch (unit) {
    case 'degC':
    case 'C':
    case 'celsius':
    case 'Celsius':
      return reading;
    case 'degF':
    case 'F':
    case 'fahrenheit':
    case 'Fahrenheit':
      return (reading - 32) / 1.8;
    case 'K':
    case 'kelvin':
      return reading - 273.15;
    default:
      return null;
  }
}

/** A Celsius temperature as degrees Fahrenheit. */
export function toFahrenheit(temperatureC: number): number {
  return temperatureC * 1.8 + 32;
}
