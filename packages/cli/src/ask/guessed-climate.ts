/** Twelve means for a place of which only the latitude and elevation are known. */
export interface GuessedClimate {
  clearness: number[];
  airC: number[];
}

/**
 * A rough climate from latitude and elevation alone, so that a site runs before anybody has looked up its weather: the
 * air of a place inland, warmest in July in the north and in January in the south, and skies that are duller the lower the
 * sun stands at noon. Its sun is within a fifth of typical and measured years of four places in nine months of ten
 * (guessed-climate.test.ts), its air several degrees off, near the sea ten in winter. Never to be decided on.
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
  return { clearness: airC.map((_, month) => guessedClearness(latitudeDeg, month)), airC };
}

/** Share of the sun above the air that reaches the ground: 0.5 with a sun 50 degrees high at noon, 0.28 with one at 10. */
function guessedClearness(latitudeDeg: number, month: number): number {
  const midMonth = month * 30.4 + 15;
  const declinationDeg = -23.45 * Math.cos((2 * Math.PI * (midMonth + 10)) / 365);
  const noonDeg = 90 - Math.abs(latitudeDeg - declinationDeg);
  return Number(Math.min(0.5, Math.max(0.28, 0.28 + 0.0055 * (noonDeg - 10))).toFixed(2));
}
