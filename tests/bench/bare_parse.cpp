// The floor: the least that a program can do with a formula file, a parse by yaml-cpp.
#include <yaml-cpp/yaml.h>

int main(int count, char** arguments) {
    return count == 2 && YAML::LoadFile(arguments[1]).size() > 0 ? 0 : 1;
}
