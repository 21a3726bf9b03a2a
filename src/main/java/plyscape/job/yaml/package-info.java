/**
 * Files of settings as trees with places: YAML text, settings put over it, and typed access to one
 * mapping that names every fault with file, line, column and key.
 *
 * <p>In: YAML 1.2 text, cells of a table, {@code KEY=VALUE}. Out: {@link
 * plyscape.job.yaml.YamlNode}s, and through {@link plyscape.job.yaml.Keys} numbers in range, texts,
 * choices and files that are there. Knows no key by name. Always true: a key that the reader didn't
 * list is a fault at once; size, nesting and aliases are bounded.
 */
package plyscape.job.yaml;
