// A look at a function that somebody else keeps for the length of a call: two pointers, nothing copied, nothing
// allocated.
//
// For parameters only. A FunctionView made from a lambda written in the call lives as long as that call; one kept in a
// variable would outlive its lambda. What must be kept is a std::function. (C++26 has this as std::function_ref; a
// std::function for each of the few hundred members of the inputs made the page 75 kB larger, 11 kB compressed.)
#pragma once

#include <concepts>
#include <memory>
#include <type_traits>
#include <utility>

namespace camside {

template <class Signature>
class FunctionView;

template <class Result, class... Args>
class FunctionView<Result(Args...)> {
 public:
  template <class F>
  requires(!std::same_as<std::remove_cvref_t<F>, FunctionView> && std::is_invocable_r_v<Result, F&, Args...>)
      FunctionView(F&& function)  // implicit, so that a lambda can stand in the call
      : object_(const_cast<void*>(static_cast<const void*>(std::addressof(function)))),
        call_(&call<std::remove_reference_t<F>>) {}

  Result operator()(Args... args) const { return call_(object_, std::forward<Args>(args)...); }

 private:
  template <class F>
  static Result call(void* object, Args... args) {
    return (*static_cast<F*>(object))(std::forward<Args>(args)...);
  }
  void* object_;
  Result (*call_)(void*, Args...);
};

}  // namespace camside
