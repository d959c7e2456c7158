import { useState } from 'preact/hooks';
import { call, fetchFile } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { lighter } from '../squawks/photos.js';
import { save } from '../parts/save.js';
import type { PaperDocument } from './types.js';

interface Props {
  memberId: string;
  kind: string;
  paperId: string;
  /** Names the paper for who cannot see where on the page this is. */
  of: string;
  documents: PaperDocument[];
  /** Whether one may be added and deleted by who looks at it. */
  mayChange: boolean;
  changed(): void;
}

/** Scans of one paper: open, add, delete. */
export function DocumentList({ memberId, kind, paperId, of, documents, mayChange, changed }: Props) {
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const at = `/members/${memberId}/documents`;
  const send = async (file: File) => {
    setBusy(true);
    const form = new FormData();
    form.append('document', file.type.startsWith('image/') ? await lighter(file) : file, 'document');
    await attempt(setProblem, async () => {
      await call('POST', `${at}/${kind}/${paperId}`, form);
      changed();
    });
    setBusy(false);
  };
  const open = ({ id, mediaType }: PaperDocument) =>
    void attempt(setProblem, async () => {
      const name = mediaType.split('/')[1] ?? 'bin';
      save(await fetchFile(`${at}/${id}`), `paper-${id.slice(-8)}.${name}`);
    });
  const remove = ({ id }: PaperDocument) =>
    void attempt(setProblem, async () => {
      await call('DELETE', `${at}/${id}`, undefined, { 'If-Match': '"1"' });
      changed();
    });
  return (
    <div class="scans">
      <ul aria-label={`Documents of ${of}`}>
        {documents.map((one, index) => (
          <li key={one.id}>
            <button type="button" class="quiet" onClick={() => open(one)}>
              Open document {index + 1} ({one.mediaType.split('/')[1]}, {Math.ceil(one.sizeBytes / 1024)} KB)
            </button>
            {mayChange && (
              <button
                type="button"
                class="quiet"
                aria-label={`Delete document ${index + 1} of ${of}`}
                onClick={() => remove(one)}
              >
                Delete
              </button>
            )}
          </li>
        ))}
      </ul>
      {mayChange && documents.length < 6 && (
        <label>
          {busy ? 'Sending…' : `Add a photo or PDF of ${of}`}
          <input
            type="file"
            accept="image/jpeg,image/png,image/webp,application/pdf"
            disabled={busy}
            onChange={(event) => {
              const input = event.currentTarget;
              const file = input.files?.[0];
              if (file) void send(file).then(() => (input.value = ''));
            }}
          />
        </label>
      )}
      <Refusal problem={problem} />
    </div>
  );
}
