// Why an answer is what it is: what stands against it, what to do, what is missing, what it rests on; each with its records.
import type { FactView, ReasonsView } from "../../src/pages/index.js";
import { Link, Refs } from "./bits.js";

function FactList({ title, facts, root }: { readonly title: string; readonly facts: readonly FactView[]; readonly root: string }) {
  if (facts.length === 0) return null;
  return (
    <>
      <p class="when">{title}</p>
      <ul class="why">
        {facts.map((f) => (
          <li key={f.says}>
            {f.says} <Refs refs={f.refs} root={root} />
          </li>
        ))}
      </ul>
    </>
  );
}

export function Reasons({ reasons, root }: { readonly reasons: ReasonsView; readonly root: string }) {
  const { against, conditions, unknowns, repairs, rests, near, history } = reasons;
  return (
    <div class="reasons">
      {reasons.says ? <p>{reasons.says}</p> : null}
      <FactList title="Against it:" facts={against} root={root} />
      {conditions.length > 0 ? (
        <>
          <p class="when">What to do, or what is lost:</p>
          <ul class="why">
            {conditions.map((c) => (
              <li key={c.says}>
                {c.says} <Refs refs={c.refs} root={root} />
                {c.ways.length > 0 ? (
                  <ul>
                    {c.ways.map((w) => (
                      <li key={w.says}>
                        {w.says} ({w.costs}
                        {w.part ? (
                          <>
                            : <Link link={w.part} root={root} />
                          </>
                        ) : null}
                        )
                      </li>
                    ))}
                  </ul>
                ) : null}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {unknowns.length > 0 ? (
        <>
          <p class="when">What is not known:</p>
          <ul class="why">
            {unknowns.map((u) => (
              <li key={u.says}>
                {u.says} {u.how ? `To find out: ${u.how}` : ""} <Refs refs={u.refs} root={root} />
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {repairs.length > 0 ? (
        <>
          <p class="when">What would help:</p>
          <ul class="why">
            {repairs.map((r) => (
              <li key={r}>{r}</li>
            ))}
          </ul>
        </>
      ) : null}
      <FactList title="It rests on:" facts={rests} root={root} />
      {near.length > 0 ? (
        <ul class="why">
          {near.map((n) => (
            <li key={n.build.href}>
              Nearly the same, not counted: <Link link={n.build} root={root} /> ({n.differs})
            </li>
          ))}
        </ul>
      ) : null}
      <FactList title="Looked at, and counting for nothing:" facts={history} root={root} />
    </div>
  );
}
