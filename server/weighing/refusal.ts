/** Something asked of the bench that it will not do. The message is a whole sentence for the person who asked. */
export class Refusal extends Error {
  readonly field: string | undefined;
  constructor(says: string, field?: string) {
    super(says);
    this.field = field;
  }
}
