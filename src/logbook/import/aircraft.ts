/** Which aircraft a row is of: one of the club's, one of its models, or what the file or the member says. Pure. */
import { classFits } from '../../members/vocabulary.js';
import type { AircraftFlown } from '../aircraft-flown.js';
import type { KindChoice } from './choices.js';
import { plate } from './detect.js';
import { categoryOf } from './words.js';

/** An aircraft of the club, or a model of it where `aircraftId` is null. */
export interface KnownAircraft {
  aircraftId: string | null;
  registration: string | null;
  modelId: string;
  makeModel: string;
  category: AircraftFlown['category'];
  class: AircraftFlown['class'];
  typeRating: string | null;
  tailwheel: boolean;
}

/** What a row says of its aircraft; absent where it says nothing. */
export interface AircraftSaid {
  registration?: string;
  makeModel?: string;
  aircraftWords?: string;
  category?: AircraftFlown['category'];
  class?: AircraftFlown['class'];
  typeRating?: string;
  tailwheel?: boolean;
}

export type AircraftFound = AircraftFlown & { by: 'aircraft' | 'model' | 'row' | 'told' };

const LONGEST_WORDS = 120;

/** A kind of aircraft by its words, whatever their case and blanks. */
export const kindKey = (words: string): string => words.toUpperCase().replace(/\s+/g, ' ').trim();

/** Finds aircraft by what rows say of them. */
export class AircraftBook {
  private readonly byPlate = new Map<string, KnownAircraft>();
  private readonly byModel = new Map<string, KnownAircraft>();
  private readonly told: Map<string, KindChoice>;

  constructor(known: readonly KnownAircraft[], told: readonly KindChoice[]) {
    for (const one of known) {
      if (one.registration !== null) this.byPlate.set(plate(one.registration), one);
      this.byModel.set(kindKey(one.makeModel), { ...one, aircraftId: null, registration: null });
    }
    this.told = new Map(told.map((kind) => [kindKey(kind.words), kind]));
  }

  /** The words under which a row's kind of aircraft is asked for. */
  static wordsOf(said: AircraftSaid): string {
    return (said.makeModel ?? said.aircraftWords ?? said.registration ?? '').slice(0, LONGEST_WORDS);
  }

  find(said: AircraftSaid): AircraftFound | { refused: string; kind?: string } {
    const words = AircraftBook.wordsOf(said);
    if (words === '') return { refused: 'It does not say which aircraft was flown.' };
    const own = said.registration === undefined ? undefined : this.byPlate.get(plate(said.registration));
    const model = this.byModel.get(kindKey(said.makeModel ?? ''));
    // Letters may have been another aircraft's before: then the row's own words stand.
    if (own && agrees(said, own) && (model === undefined || model.modelId === own.modelId))
      return flown(own, said, 'aircraft');
    if (model && agrees(said, model)) return flown(model, said, 'model');
    const fromRow = this.described(said);
    if (fromRow) return fromRow;
    const kind = this.told.get(kindKey(words));
    if (kind && !classFits(kind.category, kind.class))
      return { refused: `The class ${kind.class} is none of the category ${kind.category}.` };
    if (kind)
      return {
        ...bare(said),
        ...pick(kind),
        typeRating: said.typeRating ?? kind.typeRating ?? null,
        by: 'told',
      };
    return {
      refused: `The club does not know the aircraft “${words}”: say of what category and class it is, and whether it has a tailwheel.`,
      kind: words,
    };
  }

  private described(said: AircraftSaid): AircraftFound | { refused: string } | null {
    if (said.class === undefined || said.tailwheel === undefined) return null;
    const category = said.category ?? categoryOf(said.class);
    if (category === null) return null;
    if (!classFits(category, said.class))
      return { refused: `The class ${said.class} is none of the category ${category}.` };
    const { class: itsClass, tailwheel } = said;
    return {
      ...bare(said),
      category,
      class: itsClass,
      tailwheel,
      typeRating: said.typeRating ?? null,
      by: 'row',
    };
  }
}

const agrees = (said: AircraftSaid, known: KnownAircraft): boolean =>
  (said.category === undefined || said.category === known.category) &&
  (said.class === undefined || said.class === known.class) &&
  (said.tailwheel === undefined || said.tailwheel === known.tailwheel) &&
  (said.typeRating === undefined || said.typeRating === known.typeRating);

function flown(known: KnownAircraft, said: AircraftSaid, by: 'aircraft' | 'model'): AircraftFound {
  const registration = known.registration ?? said.registration;
  const words =
    said.aircraftWords ?? (registration ? `${known.makeModel}, ${registration}` : known.makeModel);
  return {
    ...{ aircraftId: known.aircraftId, modelId: known.modelId, aircraftWords: words.slice(0, LONGEST_WORDS) },
    ...{
      category: known.category,
      class: known.class,
      typeRating: known.typeRating,
      tailwheel: known.tailwheel,
      by,
    },
  };
}

function bare(said: AircraftSaid): Pick<AircraftFlown, 'aircraftId' | 'modelId' | 'aircraftWords'> {
  const named = [said.makeModel, said.registration].filter((one) => one !== undefined).join(', ');
  return {
    ...{ aircraftId: null, modelId: null },
    aircraftWords: (said.aircraftWords ?? named).slice(0, LONGEST_WORDS),
  };
}

const pick = ({ category, class: itsClass, tailwheel }: KindChoice) => ({
  category,
  class: itsClass,
  tailwheel,
});
