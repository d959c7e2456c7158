/** A parameter decorator that also decorates the method it belongs to, so that code and API description cannot part. */
export function withMethodDecorators(
  parameter: ParameterDecorator,
  ...methods: MethodDecorator[]
): ParameterDecorator {
  return (target, key, index) => {
    parameter(target, key, index);
    if (key === undefined) return;
    const descriptor = Object.getOwnPropertyDescriptor(target, key);
    if (descriptor) for (const decorate of methods) decorate(target, key, descriptor);
  };
}
