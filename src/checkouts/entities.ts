import { Checkout, CheckoutVoid } from './checkout.entity.js';

/** Entities of this folder, for the data source. */
export const CHECKOUT_ENTITIES = [Checkout, CheckoutVoid];
