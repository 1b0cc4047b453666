/** A plot as a table that only screen readers meet; needs the class `spoken` of the plot styles, on a box of its own because tables never shrink below their words. */

import { html } from 'lit';

/** The first cell of each row is its head. */
export interface PlotTable {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export const spokenTable = ({ caption, columns, rows }: PlotTable) => html`
  <div class="spoken"><table>
    <caption>
      ${caption}
    </caption>
    <thead>
      <tr>
        ${columns.map((column) => html`<th scope="col">${column}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        ([head, ...cells]) => html`<tr>
          <th scope="row">${head}</th>
          ${cells.map((cell) => html`<td>${cell}</td>`)}
        </tr>`,
      )}
    </tbody>
  </table></div>
`;
