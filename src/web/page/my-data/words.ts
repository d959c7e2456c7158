/** Words for the kinds of records in the file and in an erasure; one that is new there is told by its name. */
const WORDS: Record<string, string> = {
  basicMed: 'BasicMed records',
  'basic-med': 'BasicMed records',
  log: 'Flights in the log',
  bookingSeries: 'Flights booked in a series',
  bookingChanges: 'Changes of bookings',
  handOvers: 'Flights offered to and by you',
  practice: 'Practice records',
  decisions: 'Decisions about your flights',
  answersKeptForRepeats: 'Answers kept for repeated requests',
  account: 'Account',
  documentsRead: 'Readings of your documents',
  documents: 'Scanned documents',
  safetyReports: 'Hazards and occurrences you reported by name',
};

export function inWords(name: string): string {
  const said =
    WORDS[name] ?? name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replaceAll('-', ' ');
  return said.charAt(0).toUpperCase() + said.slice(1);
}
