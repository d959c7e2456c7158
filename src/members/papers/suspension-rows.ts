import { type EntityManager, In } from 'typeorm';
import { SuspensionRow } from './suspension.entity.js';
import type { SuspensionView } from './suspension.dto.js';

/** The column of the certificate a suspension hangs on. */
export type SuspensionParent = 'certificateId' | 'instructorCertificateId';

/** A suspension as the API shows it. */
export const suspensionView = ({
  id,
  suspendedFrom,
  suspendedTo,
  rowVersion,
}: SuspensionRow): SuspensionView => ({
  id,
  from: suspendedFrom,
  to: suspendedTo,
  rowVersion,
});

/** Suspensions of certificates, by certificate. One statement for all. */
export async function suspensionsOf(
  em: EntityManager,
  parent: SuspensionParent,
  certificates: { clubId: string; id: string }[],
): Promise<Map<string, SuspensionView[]>> {
  const byCertificate = new Map<string, SuspensionView[]>();
  if (certificates[0] === undefined) return byCertificate;
  const rows = await em.find(SuspensionRow, {
    where: { clubId: certificates[0].clubId, [parent]: In(certificates.map(({ id }) => id)) },
    order: { suspendedFrom: 'ASC', id: 'ASC' },
  });
  for (const row of rows) {
    const key = row[parent]!;
    byCertificate.set(key, [...(byCertificate.get(key) ?? []), suspensionView(row)]);
  }
  return byCertificate;
}
