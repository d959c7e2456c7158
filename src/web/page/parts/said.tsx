import { dayInWords, piecesOf, type Piece } from './dated-text.js';
import { LOCALE } from './locale.js';
import { momentIn } from './time.js';

/** A sentence of the service with its dates written for the reader; instants in the club's zone. */
export function Said({ text, zone }: { text: string; zone: string }) {
  return (
    <>
      {piecesOf(text).map((piece, index) => (
        <Part key={index} piece={piece} zone={zone} />
      ))}
    </>
  );
}

function Part({ piece, zone }: { piece: Piece; zone: string }) {
  switch (piece.kind) {
    case 'words':
      return <>{piece.text}</>;
    case 'day':
      return <Day date={piece.date} />;
    case 'clock':
      return (
        <time dateTime={`${piece.date}T${piece.clock}`}>
          {dayInWords(piece.date, LOCALE)}, {piece.clock}
        </time>
      );
    case 'instant':
      return <time dateTime={piece.instant}>{momentIn(zone, piece.instant)}</time>;
  }
}

/** A date as the reader writes it. */
export function Day({ date }: { date: string }) {
  return <time dateTime={date}>{dayInWords(date, LOCALE)}</time>;
}
