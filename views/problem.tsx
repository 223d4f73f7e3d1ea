/** A page that only says what went wrong and where to go on. */
export function Problem({ says }: { says: string }) {
  return (
    <div class="problems" role="alert">
      <p>{says}</p>
      <p>
        <a href="/">Back to the bench</a>
      </p>
    </div>
  );
}
