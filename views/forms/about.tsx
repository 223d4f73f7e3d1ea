/** What a form is about, and how many entries about it this page shows: one sent from a page that shows less is refused. */
export interface About {
  subject: string;
  seen: number;
}

/** The hidden fields that name it. */
export function AboutFields({ about: { subject, seen } }: { about: About }) {
  return (
    <>
      <input type="hidden" name="subject" value={subject} />
      <input type="hidden" name="version" value={seen} />
    </>
  );
}
