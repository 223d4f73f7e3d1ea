import { codeMark, Sentence } from "../sentence.tsx";

/** What is wrong with one entry of a form; `fieldId` is the name of the entry. */
export interface FieldProblem {
  fieldId: string;
  error: Sentence;
}

/** Finds what is wrong with an entry, in the form that an entry takes it: `{...errorOf("mass")}`. */
export const errorsOf =
  (problems: readonly FieldProblem[]) =>
  (fieldId: string): { error: Sentence } | Record<string, never> => {
    const error = problems.find((one) => one.fieldId === fieldId)?.error;
    return error === undefined ? {} : { error };
  };

/** A refused entry in words, tied to its field by id. */
export function Problem({ id, error }: { id: string; error: Sentence }) {
  return (
    <p class="problem" id={id} {...codeMark(error)}>
      <Sentence message={error} />
    </p>
  );
}

/** All refused entries of a form on top, each leading to its field. */
export function Problems({ heading, problems }: { heading: string; problems: readonly FieldProblem[] }) {
  if (problems.length === 0) return null;
  return (
    <section class="problems" role="alert" aria-label={heading}>
      <p>
        <strong>{heading}</strong>
      </p>
      <ul>
        {problems.map(({ fieldId, error }) => (
          <li key={fieldId}>
            <a href={`#${fieldId}`} {...codeMark(error)}>
              <Sentence message={error} />
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
