import type { ComponentChildren } from 'preact';

/** A table that on a phone becomes a list of cards, each cell with its heading before it. */
export function Table({
  title,
  headings,
  rows,
}: {
  title: string;
  headings: readonly string[];
  rows: { key: string; cells: ComponentChildren[]; mark?: string }[];
}) {
  return (
    <section class="part">
      <h3>{title}</h3>
      {rows.length === 0 ? (
        <p class="hint">None on record.</p>
      ) : (
        // Roles are said, since a table laid out as cards is no table to some readers.
        <table role="table" aria-label={title}>
          <thead role="rowgroup">
            <tr role="row">
              {headings.map((heading) => (
                <th key={heading} role="columnheader" scope="col">
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody role="rowgroup">
            {rows.map(({ key, cells, mark }) => (
              <tr key={key} role="row" data-mark={mark}>
                {cells.map((cell, index) => (
                  <td key={headings[index]} role="cell" data-heading={headings[index]}>
                    <div>{cell}</div>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
