// What if a layout asks for a name that is not there? It fails and says so; the template engine alone prints nothing.

const originals = new WeakMap<object, object>();

/** The value behind a wrapper that throws on an unknown name, at every depth. */
export const strict = <T>(value: T, name: string): T => {
  if (typeof value !== "object" || value === null) return value;
  const wrapper = new Proxy(value as object, {
    get(target, key, receiver) {
      const inside: unknown = Reflect.get(target, key, receiver);
      if (typeof key === "symbol" || Array.isArray(target)) return typeof inside === "object" ? strict(inside, `${name}[]`) : inside;
      if (!(key in target)) throw new Error(`a layout asks ${name} for "${key}"; it has ${Object.keys(target).join(", ")}`);
      return strict(inside, `${name}.${key}`);
    },
  });
  originals.set(wrapper, value as object);
  return wrapper as T;
};

/** The value itself, for functions that know its type. */
export const plain = <T>(value: T): T =>
  typeof value === "object" && value !== null ? ((originals.get(value) as T | undefined) ?? value) : value;
