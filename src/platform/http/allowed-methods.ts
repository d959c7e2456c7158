import type { Request } from 'express';

interface Layer {
  route?: { path: unknown; methods: Record<string, boolean> };
  handle?: { stack?: Layer[] };
  match(path: string): boolean;
}

/**
 * Methods that some route takes at the request's path; empty when no route has that path. Express answers a wrong
 * method with 404; this tells the two apart.
 */
export function allowedMethods(request: Request): string[] {
  const router = (request.app as unknown as { router?: { stack: Layer[] } }).router;
  const methods = new Set<string>();
  const path = request.originalUrl.split('?')[0]!;
  for (const layer of router?.stack ?? []) {
    // Catch-all routes are middleware and say nothing about this path.
    if (!layer.route || String(layer.route.path).includes('*') || !matches(layer, path)) continue;
    for (const [method, taken] of Object.entries(layer.route.methods))
      if (taken) methods.add(method.toUpperCase());
  }
  if (methods.has('GET')) methods.add('HEAD');
  return [...methods].sort();
}

function matches(layer: Layer, path: string): boolean {
  try {
    return layer.match(path);
  } catch {
    return false; // a path that cannot be decoded
  }
}
