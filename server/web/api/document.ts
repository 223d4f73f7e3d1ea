import type { FastifyDynamicSwaggerOptions } from "@fastify/swagger";
import fastify, { type FastifyInstance } from "fastify";
import { createJsonSchemaTransform, createJsonSchemaTransformObject } from "fastify-type-provider-zod";
import { message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { json } from "../../ledger/shapes.ts";
import { scopes } from "../../ledger/tokens.ts";
import { documentLanguage } from "./language.ts";
import { namedShapes } from "./shapes.ts";

const t = tellerOf(documentLanguage);

/** Any JSON at all is described as that: generators of clients stumble over a shape that contains itself. */
function anyJson({ zodSchema, jsonSchema }: { zodSchema: unknown; jsonSchema: object }): void {
  if (zodSchema !== json) return;
  for (const key of Object.keys(jsonSchema)) Reflect.deleteProperty(jsonSchema, key);
}

const shapes = { schemaRegistry: namedShapes, zodToJsonConfig: { override: anyJson } };
/** Every shape comes from the zod schema that the bench itself uses. */
const documentOptions: FastifyDynamicSwaggerOptions = {
  openapi: {
    openapi: "3.1.0",
    info: {
      title: "Underhook",
      version: "1",
      description: t("api.document.lead"),
    },
    components: {
      securitySchemes: {
        token: {
          type: "http",
          scheme: "bearer",
          description: t("api.document.token", {
            scopes: scopes.map((name) =>
              message("api.document.scope-opens", { name, opens: message(`tokens.scopes.${name}`) }),
            ),
          }),
        },
      },
    },
  },
  transform: createJsonSchemaTransform(shapes),
  transformObject: createJsonSchemaTransformObject(shapes),
};

/** The published document of these routes, which are registered once more to be described: most benches never ask for it. */
export async function documentOf(routes: (app: FastifyInstance) => void): Promise<object> {
  const { default: swagger } = await import("@fastify/swagger");
  const app = fastify();
  await app.register(swagger, documentOptions);
  await app.register(async (described) => routes(described));
  await app.ready();
  try {
    return withoutUnusedShapes(app.swagger());
  } finally {
    await app.close();
  }
}

/** What of a document matters below. */
interface Document {
  paths?: object;
  components?: { schemas?: object };
}

/**
 * The document with only the named shapes that something refers to: the library writes every one of them twice, as
 * input and as output.
 */
function withoutUnusedShapes(document: Document): object {
  const all = new Map<string, unknown>(Object.entries(document.components?.schemas ?? {}));
  const wanted = new Set<string>();
  const follow = (value: unknown) => {
    for (const [, name = ""] of JSON.stringify(value ?? null).matchAll(
      /"#\/components\/schemas\/([^"]+)"/g,
    )) {
      if (wanted.has(name)) continue;
      wanted.add(name);
      follow(all.get(name));
    }
  };
  follow(document.paths);
  const schemas = Object.fromEntries([...all].filter(([name]) => wanted.has(name)));
  return { ...document, components: { ...document.components, schemas } };
}
