/** What a person of the bench may do from another device; the machine itself needs nobody. */
export const roles = ["operator", "supervisor", "auditor", "customer-display"] as const;
export type Role = (typeof roles)[number];

/** What a route asks for. "programs": a token of the API, or whoever may see (GET) or weigh (POST). */
export type Right = "anyone" | "signed-in" | "customer" | "see" | "weigh" | "inspect" | "manage" | "programs";

/** Operators do all but settings; auditors see everything and change nothing; a customer display shows its window. */
const rightsOf: Record<Role, readonly Right[]> = {
  supervisor: ["anyone", "signed-in", "customer", "see", "weigh", "inspect", "manage"],
  operator: ["anyone", "signed-in", "customer", "see", "weigh"],
  auditor: ["anyone", "signed-in", "customer", "see", "inspect"],
  "customer-display": ["anyone", "signed-in", "customer"],
};

/** True when the role covers the right. */
export const covers = (role: Role, right: Right): boolean => rightsOf[role].includes(right);

/** The rights for reading and for changing, by the first part of the path. A place that is not here is opened by nobody. */
const places: Readonly<Record<string, readonly [read: Right, change: Right]>> = {
  "": ["see", "weigh"],
  assets: ["anyone", "anyone"],
  // a browser asks for these without its cookies; they hold names of files and nothing of the bench
  "manifest.webmanifest": ["anyone", "anyone"],
  "service-worker.js": ["anyone", "anyone"],
  // whatever watches the program has no session; nothing of the bench stands there
  health: ["anyone", "anyone"],
  ready: ["anyone", "anyone"],
  "sign-in": ["anyone", "anyone"],
  "sign-out": ["signed-in", "signed-in"],
  customer: ["customer", "weigh"],
  bench: ["see", "weigh"],
  demo: ["see", "weigh"],
  records: ["see", "weigh"],
  "records.csv": ["see", "weigh"],
  "records.jsonl": ["see", "weigh"],
  "records.parquet": ["see", "weigh"],
  "records-schema.json": ["see", "weigh"],
  reports: ["see", "weigh"],
  lots: ["see", "weigh"],
  melts: ["see", "weigh"],
  balances: ["see", "weigh"],
  checks: ["see", "weigh"],
  witness: ["see", "weigh"],
  metals: ["see", "weigh"],
  "mixture-law": ["see", "weigh"],
  worth: ["see", "weigh"],
  specifications: ["see", "weigh"],
  "specifications.json": ["see", "weigh"],
  offline: ["see", "weigh"],
  photos: ["see", "weigh"],
  plan: ["see", "weigh"],
  imports: ["see", "weigh"],
  tickets: ["see", "weigh"],
  "first-start": ["see", "manage"],
  settings: ["inspect", "manage"],
  api: ["programs", "programs"],
};

/** What a route asks for, by its method and its path as it was registered; undefined: nobody may. */
export function rightFor(method: string, path: string): Right | undefined {
  const [, place = ""] = path.split("/");
  if (!Object.hasOwn(places, place)) return undefined;
  return places[place]?.[method === "GET" || method === "HEAD" ? 0 : 1];
}
