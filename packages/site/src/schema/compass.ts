/** The sixteen points of the compass, clockwise from north. */
const points = ['n', 'nne', 'ne', 'ene', 'e', 'ese', 'se', 'sse', 's', 'ssw', 'sw', 'wsw', 'w', 'wnw', 'nw', 'nnw'];

/** The azimuth that `south`, `SE` or `south-south-west` names, degrees clockwise from north; none for another text. */
export function azimuthOfWord(text: string): number | null {
  const letters = text
    .toLowerCase()
    .replace(/north|south|east|west/g, (word) => word[0]!)
    .replace(/[\s-]/g, '');
  const at = points.indexOf(letters);
  return at < 0 ? null : at * (360 / points.length);
}
