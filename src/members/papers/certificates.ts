import { type EntityManager, In } from 'typeorm';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { classFits, CLASSES_OF } from '../vocabulary.js';
import {
  type CategoryClassDto,
  CertificateChanges,
  CertificateDto,
  CertificateView,
} from './certificate.dto.js';
import { Certificate, CertificateRating } from './certificate.entity.js';
import { showPaper } from './paper.dto.js';
import { paperKind } from './paper-kind.js';
import { suspensionsOf } from './suspension-rows.js';

/** Pilot certificates, their ratings in a table beside them. */
export const CERTIFICATES = paperKind<Certificate, CertificateDto, CertificateView>({
  path: 'certificates',
  name: { one: 'Certificate', many: 'Certificates' },
  noun: 'pilot certificate',
  entity: Certificate,
  draft: CertificateDto,
  patch: CertificateChanges,
  view: CertificateView,
  values({ level, issuedOn, validThrough, limitations, ratings }) {
    assertClassesFit(ratings ?? []);
    return { level, issuedOn, validThrough, limitations };
  },
  async writeParts(em, { clubId, id: certificateId }, { ratings, instrument, typeRatings }) {
    const of = { clubId, certificateId };
    await replace(em, { ...of, kind: 'category-class' }, ratings);
    await replace(
      em,
      { ...of, kind: 'instrument' },
      instrument?.map((category) => ({ category })),
    );
    await replace(
      em,
      { ...of, kind: 'type' },
      typeRatings?.map((typeDesignator) => ({ typeDesignator })),
    );
  },
  async views(em, rows) {
    const ratings = await ratingsOf(em, rows);
    const suspensions = await suspensionsOf(em, 'certificateId', rows);
    return rows.map((row) => {
      const own = ratings.filter(({ certificateId }) => certificateId === row.id);
      return showPaper(CertificateView, row, {
        ratings: own
          .filter((r) => r.kind === 'category-class')
          .map((r) => ({ category: r.category!, class: r.class! })),
        instrument: own.filter((r) => r.kind === 'instrument').map((r) => r.category!),
        typeRatings: own.filter((r) => r.kind === 'type').map((r) => r.typeDesignator!),
        suspensions: suspensions.get(row.id) ?? [],
      });
    });
  },
});

function assertClassesFit(ratings: CategoryClassDto[]): void {
  const wrong = ratings.findIndex((rating) => !classFits(rating.category, rating.class));
  if (wrong === -1) return;
  const { category } = ratings[wrong]!;
  throw new ProblemException('class-does-not-fit', {
    detail: `Classes of the category ${category} are: ${CLASSES_OF[category].join(', ')}.`,
    field: `ratings[${wrong}].class`,
  });
}

function ratingsOf(em: EntityManager, rows: Certificate[]): Promise<CertificateRating[]> {
  if (rows[0] === undefined) return Promise.resolve([]);
  return em.find(CertificateRating, {
    where: { clubId: rows[0].clubId, certificateId: In(rows.map(({ id }) => id)) },
    order: { kind: 'ASC', category: 'ASC', class: 'ASC', typeDesignator: 'ASC' },
  });
}

/** Makes a certificate's ratings of one kind exactly these; undefined leaves them as they are. */
async function replace(
  em: EntityManager,
  of: Pick<CertificateRating, 'clubId' | 'certificateId' | 'kind'>,
  ratings: Partial<CertificateRating>[] | undefined,
): Promise<void> {
  if (ratings === undefined) return;
  await em.delete(CertificateRating, of);
  if (ratings.length > 0)
    await em.insert(
      CertificateRating,
      ratings.map((rating) => ({ ...rating, ...of, id: newId() })),
    );
}
