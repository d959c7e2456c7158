import { TextInput } from './fields.js';

/** The least the service takes for a reason. */
const SHORTEST = 10;

/** An officer's reason for setting club rules aside this once. Empty: nothing is set aside; of the law nothing ever is. */
export function SetAside({ value, set }: { value: string; set: (value: string) => void }) {
  return (
    <TextInput
      label={`Set the club’s rules aside this once, because (at least ${SHORTEST} letters; never the law)`}
      value={value}
      set={set}
      max={1000}
    />
  );
}

/** As a request takes it. */
export const overrideOf = (reason: string): object =>
  reason.trim() === '' ? {} : { override: { reason: reason.trim() } };
