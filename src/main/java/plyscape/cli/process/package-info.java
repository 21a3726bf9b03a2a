/**
 * What a command is to the system that started it: its exit code, the thread it works on, the
 * program's version. Nothing here prints.
 */
package plyscape.cli.process;
