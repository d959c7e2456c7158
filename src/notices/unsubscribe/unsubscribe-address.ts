import { Injectable } from '@nestjs/common';
import { createHmac, timingSafeEqual } from 'node:crypto';
import { AppConfig } from '../../platform/config.js';
import { UUID } from '../../platform/ids.js';
import { kindOf, type KindOfNotice } from '../outbox/kinds.js';

/** What an address turns off: mail of some kinds to one person. */
export interface Unsubscribing {
  clubId: string;
  memberId: string;
  kinds: KindOfNotice[];
}

const TOKEN = new RegExp(`^(${UUID})\\.(${UUID})\\.([a-z+-]{1,300})\\.([\\w-]{43})$`);

/**
 * Addresses that turn mail off without signing in (RFC 8058). Each says whose mail of which kinds, under this service's own
 * seal: nothing is kept for it, so it works as long as the message is kept.
 */
@Injectable()
export class UnsubscribeAddresses {
  private readonly key: string;

  constructor(private readonly config: AppConfig) {
    this.key = createHmac('sha256', config.secret).update('bellcrank unsubscribing').digest('base64url');
  }

  /** The address for a message; null where nothing of it may be turned off, or mail programs would not use it (no https). */
  for(of: { clubId: string; memberId: string; kinds: readonly string[] }): string | null {
    const kinds = [...new Set(of.kinds)].filter((kind) => kindOf(kind)?.mayBeOff).sort();
    if (kinds.length === 0 || !this.config.publicUrl.startsWith('https://')) return null;
    const says = `${of.clubId}.${of.memberId}.${kinds.join('+')}`;
    return `${this.config.publicUrl}/api/v1/unsubscribe/${says}.${this.seal(says)}`;
  }

  /** What an address of ours turns off; null for any other. Kinds that no longer are, or may no longer be off, are left out. */
  read(token: string): Unsubscribing | null {
    const [, clubId, memberId, kinds, seal] = TOKEN.exec(token) ?? [];
    if (clubId === undefined || memberId === undefined || kinds === undefined) return null;
    const right = Buffer.from(this.seal(`${clubId}.${memberId}.${kinds}`));
    if (!timingSafeEqual(right, Buffer.from(seal!))) return null;
    return {
      ...{ clubId, memberId },
      kinds: kinds.split('+').filter((kind): kind is KindOfNotice => kindOf(kind)?.mayBeOff === true),
    };
  }

  private seal(says: string): string {
    return createHmac('sha256', this.key).update(says).digest('base64url');
  }
}
