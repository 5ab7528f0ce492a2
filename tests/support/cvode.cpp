#include "support/cvode.hpp"

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

#include <algorithm>
#include <stdexcept>
#include <string>

namespace leavenwright::testing {
namespace {

void check(int flag, const char* what) {
    if (flag < 0) {
        throw std::runtime_error(std::string(what) + " failed with " + std::to_string(flag));
    }
}

class Solver {
public:
    Solver(const MicrobeEquations& equations, const TemperatureHistory& history, double relative_error)
        : equations_(equations), history_(history) {
        check(SUNContext_Create(nullptr, &context_), "SUNContext_Create");
        const MicrobeState start = equations.start();
        state_ = N_VNew_Serial(static_cast<sunindextype>(start.size()), context_);
        smallest_ = N_VClone(state_);
        std::copy(start.begin(), start.end(), N_VGetArrayPointer(state_));
        // Errors below these do not matter; cells are counted in millions.
        const MicrobeState scales{1.0, 1e6, 1e8, 1.0, 1.0, 1.0, 1e6};
        for (std::size_t i = 0; i < scales.size(); ++i) {
            N_VGetArrayPointer(smallest_)[i] = scales[i] * relative_error * 1e-2;
        }
        memory_ = CVodeCreate(CV_ADAMS, context_);
        check(CVodeInit(memory_, &Solver::derivative, 0.0, state_), "CVodeInit");
        check(CVodeSVtolerances(memory_, relative_error, smallest_), "CVodeSVtolerances");
        check(CVodeSetUserData(memory_, this), "CVodeSetUserData");
        iteration_ = SUNNonlinSol_FixedPoint(state_, 0, context_);
        check(CVodeSetNonlinearSolver(memory_, iteration_), "CVodeSetNonlinearSolver");
        check(CVodeSetMaxNumSteps(memory_, 1000000), "CVodeSetMaxNumSteps");
    }
    Solver(const Solver&) = delete;
    Solver& operator=(const Solver&) = delete;
    ~Solver() {
        CVodeFree(&memory_);
        SUNNonlinSolFree(iteration_);
        N_VDestroy(smallest_);
        N_VDestroy(state_);
        SUNContext_Free(&context_);
    }

    MicrobeState at(double hour) {
        for (const double change : history_.breaks_hours()) {
            if (change > now_ && change <= hour) {
                advance(change);
                check(CVodeReInit(memory_, now_, state_), "CVodeReInit");
            }
        }
        advance(hour);
        MicrobeState result{};
        std::copy_n(N_VGetArrayPointer(state_), result.size(), result.begin());
        return result;
    }

private:
    static int derivative(realtype hour, N_Vector state, N_Vector change, void* self) {
        const auto& solver = *static_cast<const Solver*>(self);
        solver.equations_.derivative(N_VGetArrayPointer(state), N_VGetArrayPointer(change),
                                     solver.history_.mean_c(hour));
        return 0;
    }

    void advance(double hour) {
        if (hour > now_) {
            // Not a step beyond: behind a change of place are other equations.
            const auto changes = history_.breaks_hours();
            const auto next = std::upper_bound(changes.begin(), changes.end(), now_);
            const double stop = next == changes.end() ? history_.end_hours() + hour : *next;
            check(CVodeSetStopTime(memory_, stop), "CVodeSetStopTime");
            check(CVode(memory_, hour, state_, &now_, CV_NORMAL), "CVode");
        }
    }

    const MicrobeEquations& equations_;
    const TemperatureHistory& history_;
    SUNContext context_ = nullptr;
    N_Vector state_ = nullptr;
    N_Vector smallest_ = nullptr;
    SUNNonlinearSolver iteration_ = nullptr;
    void* memory_ = nullptr;
    double now_ = 0.0;
};

} // namespace

std::vector<MicrobeState> solve_by_cvode(const MicrobeEquations& equations, const TemperatureHistory& history,
                                         std::span<const double> hours, double relative_error) {
    Solver solver(equations, history, relative_error);
    std::vector<MicrobeState> states;
    for (const double hour : hours) {
        states.push_back(solver.at(hour));
    }
    return states;
}

} // namespace leavenwright::testing
