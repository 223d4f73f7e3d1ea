import type { ComponentChildren } from "preact";

export interface Option {
  value: string;
  label: string;
}

/** A labelled list to choose one from. */
export function Select(field: {
  name: string;
  id?: string;
  label: ComponentChildren;
  hint?: ComponentChildren;
  options: readonly Option[];
  value?: string;
  /** first, empty entry */
  empty?: string;
}) {
  const { name, id = name, label, hint, options, value, empty } = field;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint !== undefined && (
        <span class="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      <select id={id} name={name} {...(hint === undefined ? {} : { "aria-describedby": `${id}-hint` })}>
        {empty !== undefined && <option value="">{empty}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}

/** The unit beside an entry; its label is for screen readers, since the entry's own label stands above. */
export function UnitSelect(field: {
  name: string;
  id?: string;
  label: string;
  units: readonly string[];
  value?: string;
}) {
  const { name, id = name, label, units, value = "g" } = field;
  return (
    <select id={id} name={name} aria-label={label}>
      {units.map((unit) => (
        <option key={unit} value={unit} selected={unit === value}>
          {unit}
        </option>
      ))}
    </select>
  );
}

/** A box to tick. */
export function Check(field: {
  name: string;
  id?: string;
  label: ComponentChildren;
  checked?: boolean;
  value?: string;
  required?: boolean;
}) {
  const { name, id = name, label, checked = false, value = "yes", required = false } = field;
  return (
    <div class="check">
      <input type="checkbox" id={id} name={name} value={value} checked={checked} required={required} />
      <label for={id}>{label}</label>
    </div>
  );
}

export interface Card extends Option {
  hint?: string;
  drawing?: ComponentChildren;
}

/** One choice of a few, each with words and, where it helps, a drawing. */
export function RadioCards(field: {
  name: string;
  legend: ComponentChildren;
  cards: readonly Card[];
  value?: string;
  required?: boolean;
}) {
  const { name, legend, cards, value, required = true } = field;
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div class="cards">
        {cards.map((card) => (
          <label class="card" key={card.value}>
            <input
              type="radio"
              name={name}
              value={card.value}
              checked={card.value === value}
              required={required}
            />
            <strong>{card.label}</strong>
            {card.hint !== undefined && <span class="hint">{card.hint}</span>}
            {card.drawing}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
