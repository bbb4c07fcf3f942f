// The settings of a card: every jumper, switch and software setting with what each position does and takes.
import type { CardPage } from "../../src/pages/index.js";
import { Fold } from "./bits.js";

export function Settings({ view }: { readonly view: CardPage }) {
  if (view.settings.length === 0) return null;
  return (
    <Fold id="settings" title="Settings" says={view.settings.map((s) => s.id).join(", ")}>
      {view.settings.map((s) => (
        <div key={s.id + (s.on ?? "")} class="setting">
          <h3>
            <code>{s.id}</code> {s.name}
          </h3>
          <p class="more">
            By {s.by}
            {s.on ? `, ${s.on} only` : ""}.
          </p>
          <table class="list">
            <thead>
              <tr>
                <th scope="col">Position</th>
                <th scope="col">How</th>
                <th scope="col">Takes</th>
              </tr>
            </thead>
            <tbody>
              {s.positions.map((p) => (
                <tr key={p.id}>
                  <th scope="row">
                    <code>{p.id}</code>
                    {p.factory ? <span class="more"> from the factory</span> : null}
                  </th>
                  <td data-label="How">{p.how || "\u2013"}</td>
                  <td data-label="Takes">{p.takes}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      ))}
      {view.impossible.map((i) => (
        <p key={i.says}>
          {i.says} cannot stand together: {i.why}
        </p>
      ))}
    </Fold>
  );
}
