export { readWeather } from './read-weather.js';
export { readWeatherFile } from './read-weather-file.js';
export { WeatherError } from './weather-error.js';
export type { Notice, WeatherPlace, WeatherYear } from './weather-year.js';
