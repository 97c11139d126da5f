/** Twelve means for a place of which only the latitude and elevation are known. */
export interface GuessedClimate {
  clearness: number[];
  airC: number[];
  snowyDays: number[];
}

/**
 * A rough climate from latitude and elevation alone, so that a site runs before anybody has looked up its weather: the
 * air of a place inland, warmest in July in the north and in January in the south, half of the sunshine of clear skies.
 * From memory, good to several degrees and a fifth of the sun: never to be decided on.
 */
export function guessedClimate(latitudeDeg: number, elevationM: number): GuessedClimate {
  const away = Math.abs(latitudeDeg);
  const mean = 28 - 0.45 * Math.max(0, away - 10) - 0.15 * Math.max(0, away - 45) - 0.0065 * elevationM;
  // Land fills the north: its seasons are twice those of the south.
  const swing = (latitudeDeg >= 0 ? 0.27 : 0.13) * away;
  const warmest = latitudeDeg >= 0 ? 6 : 0;
  const airC = Array.from({ length: 12 }, (_, month) =>
    Number((mean + swing * Math.cos((Math.PI * (month - warmest)) / 6)).toFixed(0)),
  );
  const winter = airC.map((air) => (air < 0 ? 8 : air < 4 ? 3 : 0));
  return { clearness: airC.map((air) => (air < 0 ? 0.45 : 0.5)), airC, snowyDays: winter };
}
