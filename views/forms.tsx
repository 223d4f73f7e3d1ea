/** The small parts of every form: entries, choices, refusals. */
export * from "./forms/about.tsx";
export * from "./forms/choices.tsx";
export * from "./forms/decimal-entries.tsx";
export * from "./forms/field.tsx";
export * from "./forms/problems.tsx";
