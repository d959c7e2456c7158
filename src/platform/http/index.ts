export { IsHoursTenths, isHoursTenths } from './hours.decorator.js';
export { IdempotencyKey, idempotencyKey, tellStored } from './idempotency-key.js';
export { IsInstant, IsLocalDate, parseInstant, parseLocalDate } from './instants.decorator.js';
export { NoNul } from './no-nul.js';
export { IsId, LowerCase, Optional } from './optional.js';
export { OPEN_TO_ALL, OpenToAll } from './open-to-all.js';
export {
  decodeCursor,
  encodeCursor,
  pageOf,
  PageQuery,
  PageShape,
  readCursor,
  type Page,
  type PagePosition,
} from './pages.js';
export { UuidPipe } from './uuid.pipe.js';
export { RequestValidationPipe } from './validation.pipe.js';
export { etagOf, EtagInterceptor, IfMatch, parseIfMatch, requireMatch, requireVersion } from './versions.js';
