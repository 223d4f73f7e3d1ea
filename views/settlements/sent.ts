import { errorsOf } from "../forms.tsx";
import type { SettlementForm, SettlementView } from "./view.ts";

/** What was typed into one form of the page, when it was this one that was sent back. */
export function sentBack(view: SettlementView, form: SettlementForm) {
  const isIt = view.sent === form;
  const values = isIt ? view.values : {};
  const errorOf = errorsOf(isIt ? view.problems : []);
  return {
    values,
    entry: (name: string, first = "") => ({
      name,
      id: `${form}-${name}`,
      value: values[name] ?? first,
      ...errorOf(name),
    }),
  };
}
