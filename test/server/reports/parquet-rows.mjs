// Reads a Parquet file with the reader of the Arrow project (Rust, compiled to WebAssembly), which shares nothing with the
// writer, and prints {columns: {name: type}, rows: [[cell, …], …]} as JSON. Argument: FILE
import { readFileSync } from "node:fs";
import { tableFromIPC } from "apache-arrow";
import { readParquet } from "parquet-wasm/node";

const table = tableFromIPC(readParquet(new Uint8Array(readFileSync(process.argv[2]))).intoIPCStream());
const columns = Object.fromEntries(table.schema.fields.map(({ name, type }) => [name, String(type)]));
const rows = table.toArray().map((row) => Object.values(row.toJSON()));
console.log(JSON.stringify({ columns, rows }));
