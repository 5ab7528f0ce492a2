// The floor: the least that a program can do with formula files, a parse by yaml-cpp.
#include <yaml-cpp/yaml.h>

int main(int count, char** arguments) {
    for (int i = 1; i < count; ++i) {
        if (YAML::LoadFile(arguments[i]).size() == 0) {
            return 1;
        }
    }
    return count > 1 ? 0 : 1;
}
