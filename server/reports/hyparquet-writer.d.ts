/** What is used of it. */
declare module "hyparquet-writer" {
  export class ByteWriter {
    /** bytes in the buffer; set to 0 when they were taken */
    index: number;
    getBytes(): Uint8Array;
  }
  interface ColumnData {
    name: string;
    type?: "TIMESTAMP" | "DOUBLE" | "STRING";
    data: readonly (string | number | Date | null)[];
  }
  interface Schema {
    readonly elements: unique symbol;
  }
  export function schemaFromColumnData(of: { columnData: readonly ColumnData[] }): Schema;
  export class ParquetWriter {
    constructor(how: { writer: ByteWriter; schema: Schema; createdBy: string });
    write(some: { columnData: readonly ColumnData[]; rowGroupSize: number }): Promise<void> | void;
    finish(): Promise<void> | void;
  }
}
