import { DayField, Shown, TextField, WordField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';
import { HOLDS, type Holds } from './signer.entity.js';

/** Who may sign for work, as far as the club has it on record. */
export class NewSigner {
  @TextField({ max: 120, description: 'Person or shop' })
  name: string;

  @TextField({ max: 80, description: 'Number of the certificate' })
  certificate: string;

  @WordField(HOLDS, {
    description:
      'mechanic: airframe and powerplant ratings; inspection-authorization: such a mechanic with 14 CFR 65.91; pilot: preventive ' +
      'maintenance alone (14 CFR 43.3(g))',
  })
  holds: Holds;

  @DayField()
  validFrom: string;

  @DayField({
    nullable: true,
    description: 'Last day; an inspection authorization ends in March of each odd year',
  })
  validThrough?: string | null;
}

/** PATCH of a signer. */
export class SignerChanges extends ChangesOf(NewSigner) {}

/** A signer as an answer. */
export class SignerView extends ViewOf(NewSigner) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of signers. */
export class SignerPage extends PageShape {
  @Shown({ type: () => SignerView, isArray: true })
  items: SignerView[];
}
