import { keysOf } from "../../calibration/keyed.ts";
import { dimensions } from "./dimensions.tsx";
import { displaced } from "./displaced.tsx";
import { flask } from "./flask.tsx";
import { hung } from "./hung.tsx";
import type { MethodName, MethodView } from "./view.ts";

/** Every method as it is drawn, in the order pages offer them. */
export const methodViews: Readonly<Record<MethodName, MethodView>> = { displaced, hung, flask, dimensions };

export const methodNames = keysOf(methodViews);
