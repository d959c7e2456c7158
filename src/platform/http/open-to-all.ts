import { SetMetadata } from '@nestjs/common';

/** Metadata key that the sign-in guard honours on a handler or controller. */
export const OPEN_TO_ALL = 'bellcrank:public';

/** Marks a controller or handler as open to callers who are not signed in. */
export const OpenToAll = () => SetMetadata(OPEN_TO_ALL, true);
