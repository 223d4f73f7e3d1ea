import { codeMark, Sentence } from "../sentence.tsx";

/** A refused entry: a message, one whole sentence, or its four parts. */
export type FieldError =
  | Sentence
  | {
      /** what is wrong */
      what: string;
      /** the entry as it was typed */
      value?: string;
      /** what would be right */
      right: string;
      /** what to do now */
      todo: string;
    };

/** Finds what is wrong with an entry, in the form that an entry takes it: `{...errorOf("mass")}`. */
export const errorsOf =
  (problems: readonly { fieldId: string; error: FieldError }[]) =>
  (fieldId: string): { error: FieldError } | Record<string, never> => {
    const error = problems.find((one) => one.fieldId === fieldId)?.error;
    return error === undefined ? {} : { error };
  };

/** A refused entry in words, tied to its field by id. */
export function Problem({ id, error }: { id: string; error: FieldError }) {
  if (typeof error === "string" || "code" in error)
    return (
      <p class="problem" id={id} {...codeMark(error)}>
        <Sentence says={error} />
      </p>
    );
  return (
    <p class="problem" id={id}>
      <Sentence says={error.what} />
      {error.value !== undefined && ` “${error.value}”`}
      <span>
        <Sentence says={error.right} /> <Sentence says={error.todo} />
      </span>
    </p>
  );
}

/** All refused entries of a form on top, each leading to its field. */
export function Problems({
  heading,
  problems,
}: {
  heading: string;
  problems: readonly { fieldId: string; error: FieldError }[];
}) {
  if (problems.length === 0) return null;
  return (
    <section class="problems" role="alert" aria-label={heading}>
      <p>
        <strong>{heading}</strong>
      </p>
      <ul>
        {problems.map(({ fieldId, error }) => (
          <li key={fieldId}>
            <a
              href={`#${fieldId}`}
              {...(typeof error === "object" && "code" in error ? codeMark(error) : {})}
            >
              <Sentence says={typeof error === "string" || "code" in error ? error : error.what} />
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
