import { CHECKOUT_ITEMS, type CheckoutLack, DRILLS } from '../rust/index.js';
import type { OpenCheckout } from './needs.js';

/**
 * Manoeuvres a checkout still asks for: those of the club's own items that are not signed, as often as one flight needs
 * at least. Where the club has laid nothing down, what is usual.
 */
export function lacksOf({ id, progress }: Pick<OpenCheckout, 'id' | 'progress'>): CheckoutLack[] {
  const any = { checkoutId: id, condition: { kind: 'any' as const } };
  if (progress === null) return CHECKOUT_ITEMS.map((item) => ({ ...any, ...item }));
  return progress.items.flatMap(({ item: { manoeuvre, required }, state }) => {
    if (manoeuvre === null || !required || state === 'signed') return [];
    const usual = CHECKOUT_ITEMS.find((one) => one.manoeuvre === manoeuvre)?.times;
    const least = DRILLS.find((one) => one.manoeuvre === manoeuvre)?.least;
    return [{ ...any, manoeuvre, times: usual ?? least ?? 1 }];
  });
}

/** What the plan says of it. */
export function checkoutSays({ makeModel, neededOn, progress }: OpenCheckout): string {
  const booked = `A flight on ${neededOn} is booked on a ${makeModel}, and no checkout of it stands.`;
  if (progress === null)
    return `${booked} What the club’s checkout asks for is not on record: the usual manoeuvres are planned.`;
  const open = progress.items.filter(({ item, state }) => item.required && state !== 'signed');
  if (open.length === 0) return `${booked} Every item of it is signed.`;
  const ground = open.filter(({ item }) => item.manoeuvre === null).map(({ item }) => `“${item.title}”`);
  const rest =
    ground.length === 0 ? '' : ` Not planned, since no manoeuvre stands for it: ${ground.join(', ')}.`;
  return `${booked} The club’s checkout asks for ${open.length} more item${open.length === 1 ? '' : 's'}: those that are manoeuvres are planned.${rest}`;
}
