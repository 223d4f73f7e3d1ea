import { keepDigest } from "./catalogue-files.ts";

// The last step of the build: catalogues that cannot be used fail it.
keepDigest();
