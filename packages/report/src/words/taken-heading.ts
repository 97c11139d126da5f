/** Above what a year assumes, on every page. */
export const takenHeading = 'Taken as, since the site file does not say';
